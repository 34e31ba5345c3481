import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { arrangeResult } from '#jobs/results/arrange.ts';
import { cutResult } from '#jobs/results/cut.ts';
import { draftResult } from '#jobs/results/draft.ts';
import { lightResult } from '#jobs/results/light.ts';
import { lookResult } from '#jobs/results/look.ts';
import { printResult } from '#jobs/results/print.ts';
import { readyResult } from '#jobs/results/ready.ts';
import { routeResult } from '#jobs/results/route.ts';
import { sizeResult } from '#jobs/results/size.ts';
import { traceResult } from '#jobs/results/trace.ts';
import { trueResult } from '#jobs/results/true.ts';
import { cuttingPresetSchema } from '#paper/cut/preset.ts';
import { threadListSchema } from '#pattern/threads/thread-list.ts';

// `npx vitest run test/jobs/schemas.test.ts -u` writes the published schemas anew.
describe('the published schemas of --json are those of the code', () => {
  test.each([
    ['arrange', arrangeResult],
    ['draft', draftResult],
    ['light', lightResult],
    ['trace', traceResult],
    ['look', lookResult],
    ['ready', readyResult],
    ['print', printResult],
    ['route', routeResult],
    ['size', sizeResult],
    ['cut', cutResult],
    ['true', trueResult],
  ])('%s', async (verb, schema) => {
    const published = { title: `What \`pinlight ${verb} --json\` prints`, ...z.toJSONSchema(schema) };
    await expect(`${JSON.stringify(published, null, 2)}\n`).toMatchFileSnapshot(
      `../../docs/schema/${verb}.schema.json`,
    );
  });
});

test('the published schema of a shop\u2019s preset is that of the code', async () => {
  const published = {
    title: 'What a shop or a machine wants of `pinlight cut`, for --preset',
    ...z.toJSONSchema(cuttingPresetSchema),
  };
  await expect(`${JSON.stringify(published, null, 2)}\n`).toMatchFileSnapshot(
    '../../docs/schema/cutting-preset.schema.json',
  );
});

test('the published schema of a list of threads is that of the code', async () => {
  const published = z.toJSONSchema(threadListSchema);
  await expect(`${JSON.stringify(published, null, 2)}\n`).toMatchFileSnapshot(
    '../../docs/schema/thread-list.schema.json',
  );
});
