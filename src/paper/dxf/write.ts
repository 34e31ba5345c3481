import { MM_PER_INCH } from '#base/units/length.ts';
import { type CutDrawing, type CutLayer, cutLayers, linesIn } from '../cut/drawing.ts';
import { Entities } from './entities.ts';
import { beginTables, endR2000, modelSpace } from './frame.ts';
import { Tags } from './tags.ts';

export interface DxfOptions {
  /** R12 (AC1009) is read by every machine's program; R2000 (AC1015) by those that want the unit in the file. */
  readonly release: 'R12' | 'R2000';
  readonly unit: 'mm' | 'in';
  readonly holes: 'circle' | 'polyline';
  /** Lines for people at the head of the file, in ASCII. */
  readonly comments: readonly string[];
}

/**
 * A cutting file as ASCII DXF (Autodesk DXF reference): plain entities only, all layers declared, y up, from 0,0.
 * $INSUNITS is strictly of later releases; readers take it from R12 as well, and the unit stands in a comment too.
 */
export function writeDxf(drawing: CutDrawing, options: DxfOptions): string {
  const { release, unit, comments } = options;
  const scale = unit === 'mm' ? 1 : 1 / MM_PER_INCH;
  const digits = unit === 'mm' ? 4 : 6;
  const tags = new Tags();
  const named = unit === 'mm' ? 'mm (millimetres)' : 'in (inches)';
  for (const comment of [`Units: ${named}`, ...comments]) tags.add(999, ascii(comment));
  header(tags, drawing, options, scale, digits);
  if (release === 'R2000') tags.add(0, 'SECTION').add(2, 'CLASSES').add(0, 'ENDSEC');
  beginTables(tags, release, layerColours);
  tags.add(0, 'SECTION').add(2, 'ENTITIES');
  const entities = new Entities(tags, {
    height: drawing.height,
    scale,
    digits,
    owner: release === 'R2000' ? modelSpace : null,
    holes: options.holes,
  });
  for (const layer of cutLayers) for (const line of linesIn(drawing, layer)) entities.add(layer, line);
  tags.add(0, 'ENDSEC');
  if (release === 'R2000') endR2000(tags);
  return tags.add(0, 'EOF').text();
}

/** Numbers of AutoCAD's own palette: red holes, green inner cuts, blue outline, white engraving, grey for aligning. */
const layerColours: Readonly<Record<CutLayer, number>> = {
  REF: 8,
  ENGRAVE: 7,
  HOLES: 1,
  INNER: 3,
  OUTLINE: 5,
};

function header(
  tags: Tags,
  { width, height }: CutDrawing,
  { release, unit }: DxfOptions,
  scale: number,
  digits: number,
): void {
  const corner = (name: string, x: number, y: number): void => {
    tags
      .add(9, name)
      .real(10, x * scale, digits)
      .real(20, y * scale, digits);
    if (!name.startsWith('$LIM')) tags.real(30, 0, digits);
  };
  tags
    .add(0, 'SECTION')
    .add(2, 'HEADER')
    .add(9, '$ACADVER')
    .add(1, release === 'R12' ? 'AC1009' : 'AC1015');
  if (release === 'R2000') tags.add(9, '$HANDSEED').add(5, 'FFFFFFF');
  tags.add(9, '$INSUNITS').add(70, unit === 'mm' ? 4 : 1);
  tags.add(9, '$MEASUREMENT').add(70, unit === 'mm' ? 1 : 0);
  corner('$EXTMIN', 0, 0);
  corner('$EXTMAX', width, height);
  corner('$LIMMIN', 0, 0);
  corner('$LIMMAX', width, height);
  tags.add(0, 'ENDSEC');
}

/** Names in comments come from patterns: what is not printable ASCII becomes a question mark. */
const ascii = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x20-\x7e]/gu, '?')
    .slice(0, 240);
