import { afterEach, describe, expect, it } from 'vitest';
import { inPieces } from '../../src/bench/worker/in-pieces.ts';

const ports: MessagePort[] = [];
afterEach(() => {
  for (const port of ports.splice(0)) port.close();
});

/** What arrives of a value on the other side of a channel. */
async function sent(value: unknown): Promise<unknown> {
  const [wire, transfer] = inPieces.serialize(value);
  const { port1, port2 } = new MessageChannel();
  ports.push(port1, port2);
  const arrived = new Promise<typeof wire>((resolve) => {
    port2.onmessage = ({ data }) => resolve(data);
  });
  port1.postMessage(wire, transfer);
  return inPieces.deserialize(await arrived);
}

const pins = Array.from({ length: 9001 }, (_, at) => ({ id: `p${at}`, x: at, y: -at }));

describe('a value with long lists, sent in pieces', () => {
  it('arrives as it was, its short lists too', async () => {
    const value = {
      ok: true,
      made: { pins, marks: pins.slice(0, 4001), areas: [{ outline: pins.slice(0, 3) }] },
    };
    expect(await sent(value)).toEqual(value);
  });

  it('arrives as it was where it is itself a long list', async () => {
    expect(await sent(pins)).toEqual(pins);
  });

  it('leaves what was sent untouched', async () => {
    const value = { pins };
    await sent(value);
    expect(value.pins).toHaveLength(9001);
    expect(value.pins).toBe(pins);
  });

  it('is not confused by names that mean something to the language', async () => {
    const value = JSON.parse(`{"__proto__": ${JSON.stringify(pins)}, "constructor": {"length": 1}}`);
    const arrived = await sent(value);
    expect(Object.getPrototypeOf(arrived)).toBe(Object.prototype);
    expect(JSON.stringify(arrived)).toBe(JSON.stringify(value));
  });

  it('says so where a record cannot be sent', async () => {
    await expect(sent({ pins: [...pins, { work: () => {} }] })).rejects.toThrow(/could not be cloned/);
  });

  it('is left to others where its lists are short, or it is no plain value', () => {
    expect(inPieces.canHandle({ pins: pins.slice(0, 4000) })).toBe(false);
    expect(inPieces.canHandle(new Uint8Array(100_000))).toBe(false);
    expect(inPieces.canHandle(new Map([['pins', pins]]))).toBe(false);
    expect(inPieces.canHandle(null)).toBe(false);
  });
});
