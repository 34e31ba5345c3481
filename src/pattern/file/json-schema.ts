import { z } from 'zod';
import { fileSchema } from './schema.ts';

/**
 * The JSON Schema (draft 2020-12) of pattern files, as it is published. It says all that a shape can say; that ids
 * are used once and references resolve is beyond it. Text lengths are counted in UTF-16 code units by the reader and
 * in code points by JSON Schema, which is never stricter.
 */
export const patternJsonSchema = (): unknown =>
  z.toJSONSchema(fileSchema, { target: 'draft-2020-12', io: 'input' });
