import { expect, test } from 'vitest';
import { openMemory } from '../../src/bench/store/database.ts';
import { settingsToKeep, takeSettings } from '../../src/bench/store/kept-settings.ts';
import { THIS_BROWSER, writeSetting } from '../../src/bench/store/settings.ts';

test('settings from a backup are added to those here: nothing here changes, lists grow, copies keep their place', async () => {
  const database = await openMemory();
  await writeSetting(database, 'preset', { kerf: 0.1 });
  await writeSetting(database, 'printers', [{ name: 'Study', x: 1 }]);
  await writeSetting(database, THIS_BROWSER, { backup: 1 });
  const kept = {
    preset: { kerf: 0.2 },
    printers: [
      { name: 'Study', x: 2 },
      { name: 'Shop', x: 3 },
    ],
    'place old-id': 17,
    [THIS_BROWSER]: { backup: 2 },
  };
  await takeSettings(database, kept, new Map([['old-id', 'new-id']]));
  expect(await settingsToKeep(database)).toEqual({
    preset: { kerf: 0.1 },
    printers: [
      { name: 'Study', x: 1 },
      { name: 'Shop', x: 3 },
    ],
    'place new-id': 17,
  });
  expect(await database.get('settings', THIS_BROWSER)).toEqual({ backup: 1 });
  await takeSettings(database, 'not settings', new Map());
});
