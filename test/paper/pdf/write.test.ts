import { expect, test } from 'vitest';
import { paperNamed } from '#base/units/paper.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { writePdf } from '#paper/pdf/write.ts';
import { typeface } from '../support/fonts.ts';

const paper = paperNamed('A4')!;
const page: { paper: typeof paper; marks: InkMark[] } = {
  paper,
  marks: [
    { kind: 'disc', role: 'hole', at: { x: 50, y: 60 }, diameter: 0.6, colour: '#000000' },
    {
      kind: 'text',
      role: 'note',
      at: { x: 20, y: 30 },
      text: 'Größe Łódź',
      size: 5,
      width: typeface.widthOf('Größe Łódź', 5, 'bold'),
      weight: 'bold',
      align: 'left',
      turn: 0,
      colour: '#000000',
    },
  ],
};

test('the same pages give the same bytes', async () => {
  const write = () => writePdf([page], { typeface, meta: { title: 'Größe <Łódź>' } });
  const [first, second] = [await write(), await write()];
  expect(first).toEqual(second);
  expect(new TextDecoder('latin1').decode(first)).not.toContain('CreationDate');
});
