import { z } from 'zod';

// The page's policy forbids making code from text, which zod's fast path tries as soon as a schema is made: this
// module comes before every module that makes one.
z.config({ jitless: true });
