import type { Tags } from './tags.ts';

/** The handle of the space that R2000 entities lie in. */
export const modelSpace = '1F';
const PAPER_SPACE = '1B';

/**
 * The tables in front of the entities: the one line type and all layers. R2000 files must have every table and the two
 * spaces as blocks as well (Autodesk DXF reference), even where nothing is in them.
 */
export function beginTables(
  tags: Tags,
  release: 'R12' | 'R2000',
  layers: Readonly<Record<string, number>>,
): void {
  const isNew = release === 'R2000';
  tags.add(0, 'SECTION').add(2, 'TABLES');
  const table = (name: string, handle: string, records: readonly (() => void)[]): void => {
    tags.add(0, 'TABLE').add(2, name);
    if (isNew) tags.add(5, handle).add(330, 0).add(100, 'AcDbSymbolTable');
    tags.add(70, records.length);
    if (isNew && name === 'DIMSTYLE') tags.add(100, 'AcDbDimStyleTable').add(71, 0);
    for (const record of records) record();
    tags.add(0, 'ENDTAB');
  };
  const record = (type: string, handle: string, owner: string, subclass: string, name: string): void => {
    tags.add(0, type);
    if (isNew) {
      tags.add(type === 'DIMSTYLE' ? 105 : 5, handle).add(330, owner);
      tags.add(100, 'AcDbSymbolTableRecord').add(100, `AcDb${subclass}TableRecord`);
    }
    tags.add(2, name);
  };
  const lineType = (handle: string, name: string, words: string) => () => {
    record('LTYPE', handle, '5', 'Linetype', name);
    tags.add(70, 0).add(3, words).add(72, 65).add(73, 0).real(40, 0, 4);
  };
  const layer = (handle: string, name: string, colour: number) => () => {
    record('LAYER', handle, '2', 'Layer', name);
    tags.add(70, 0).add(62, colour).add(6, 'CONTINUOUS');
    if (isNew) tags.add(390, '0');
  };
  if (isNew) table('VPORT', '8', []);
  table('LTYPE', '5', [
    ...(isNew ? [lineType('14', 'ByBlock', ''), lineType('15', 'ByLayer', '')] : []),
    lineType('16', 'CONTINUOUS', 'Solid line'),
  ]);
  table('LAYER', '2', [
    layer('10', '0', 7),
    ...Object.entries(layers).map(([name, colour], k) =>
      layer((0x40 + k).toString(16).toUpperCase(), name, colour),
    ),
  ]);
  if (isNew) {
    table('STYLE', '3', [
      () => {
        record('STYLE', '11', '3', 'TextStyle', 'STANDARD');
        tags.add(70, 0).real(40, 0, 4).real(41, 1, 4).real(50, 0, 4).add(71, 0).real(42, 2.5, 4);
        tags.add(3, 'txt').add(4, '');
      },
    ]);
    table('VIEW', '6', []);
    table('UCS', '7', []);
    table('APPID', '9', [
      () => {
        record('APPID', '12', '9', 'RegApp', 'ACAD');
        tags.add(70, 0);
      },
    ]);
    table('DIMSTYLE', 'A', []);
    table('BLOCK_RECORD', '1', [
      () => record('BLOCK_RECORD', modelSpace, '1', 'Block', '*Model_Space'),
      () => record('BLOCK_RECORD', PAPER_SPACE, '1', 'Block', '*Paper_Space'),
    ]);
  }
  tags.add(0, 'ENDSEC');
  if (!isNew) return;
  tags.add(0, 'SECTION').add(2, 'BLOCKS');
  space(tags, '*Model_Space', modelSpace, '20', '21');
  space(tags, '*Paper_Space', PAPER_SPACE, '1C', '1D');
  tags.add(0, 'ENDSEC');
}

/** The dictionaries without which an R2000 file is not whole. */
export function endR2000(tags: Tags): void {
  tags.add(0, 'SECTION').add(2, 'OBJECTS');
  tags.add(0, 'DICTIONARY').add(5, 'C').add(330, 0).add(100, 'AcDbDictionary').add(281, 1);
  tags.add(3, 'ACAD_GROUP').add(350, 'D');
  tags.add(0, 'DICTIONARY').add(5, 'D').add(330, 'C').add(100, 'AcDbDictionary').add(281, 1);
  tags.add(0, 'ENDSEC');
}

function space(tags: Tags, name: string, record: string, begin: string, end: string): void {
  tags.add(0, 'BLOCK').add(5, begin).add(330, record).add(100, 'AcDbEntity').add(8, '0');
  tags.add(100, 'AcDbBlockBegin').add(2, name).add(70, 0).real(10, 0, 4).real(20, 0, 4).real(30, 0, 4);
  tags.add(3, name).add(1, '');
  tags
    .add(0, 'ENDBLK')
    .add(5, end)
    .add(330, record)
    .add(100, 'AcDbEntity')
    .add(8, '0')
    .add(100, 'AcDbBlockEnd');
}
