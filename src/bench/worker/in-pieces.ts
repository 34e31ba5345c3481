import { type TransferHandler, transferHandlers } from 'comlink';

/** Records of one message: few enough that neither writing nor reading it holds up the page. */
const PIECE = 4000;
/** So deep inside a value a long list is looked for; a job's patterns and findings lie less deep. */
const DEPTH = 5;

/** A list that follows in pieces: where in the value it stands, and how many records it has. */
interface LongList {
  readonly path: readonly string[];
  readonly length: number;
}

interface Parcel {
  /** The value, with its long lists empty. */
  readonly value: unknown;
  readonly lists: readonly LongList[];
  readonly port: MessagePort;
}

type Message = { readonly list: number; readonly records: readonly unknown[] } | { readonly failed: string };

type PlainObject = Readonly<Record<string, unknown>>;

/**
 * Sends a value with long lists in many small messages, each when the one before has been read. What is read is a
 * promise of the value. It rejects where a record cannot be sent.
 */
export const inPieces: TransferHandler<unknown, Parcel> = {
  canHandle: (value): value is unknown => longListsOf(value).length > 0,

  serialize(value) {
    const lists = longListsOf(value);
    const { port1, port2 } = new MessageChannel();
    const pieces = piecesOf(value, lists);
    port1.onmessage = () => {
      const next = pieces.next();
      if (next.done) port1.close();
      else post(port1, next.value);
    };
    const empty = lists.reduce((rest, { path }) => withEmpty(rest, path), value);
    return [{ value: empty, lists, port: port2 }, [port2]];
  },

  deserialize: ({ value, lists, port }) =>
    new Promise((resolve, reject) => {
      const targets = lists.map(({ path }) => listAt(value, path) as unknown[]);
      let missing = lists.reduce((sum, { length }) => sum + length, 0);
      port.onmessageerror = () => reject(new Error('A piece could not be read.'));
      port.onmessage = ({ data }: MessageEvent<Message>) => {
        if ('failed' in data) return reject(new Error(data.failed));
        for (const record of data.records) targets[data.list]!.push(record);
        missing -= data.records.length;
        port.postMessage(null);
        if (missing === 0) resolve(value);
      };
      port.postMessage(null);
    }),
};

/** Has all values with long lists sent in pieces, on this side. */
export const sendInPieces = (): void => void transferHandlers.set('in-pieces', inPieces);

function post(port: MessagePort, piece: Message): void {
  try {
    port.postMessage(piece);
  } catch (error) {
    port.postMessage({ failed: String(error) });
  }
}

function* piecesOf(value: unknown, lists: readonly LongList[]): Generator<Message> {
  for (const [list, { path, length }] of lists.entries()) {
    const records = listAt(value, path);
    for (let first = 0; first < length; first += PIECE) {
      yield { list, records: records.slice(first, first + PIECE) };
    }
  }
}

const isPlain = (value: unknown): value is PlainObject =>
  typeof value === 'object' &&
  value !== null &&
  [Object.prototype, null].includes(Object.getPrototypeOf(value));

function longListsOf(value: unknown, path: readonly string[] = []): LongList[] {
  if (Array.isArray(value)) return value.length > PIECE ? [{ path, length: value.length }] : [];
  if (!isPlain(value) || path.length === DEPTH) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    typeof part === 'object' ? longListsOf(part, [...path, key]) : [],
  );
}

const listAt = (value: unknown, path: readonly string[]): readonly unknown[] =>
  path.reduce((part, key) => (part as PlainObject)[key], value) as readonly unknown[];

function withEmpty(value: unknown, [key, ...rest]: readonly string[]): unknown {
  if (key === undefined) return [];
  return { ...(value as PlainObject), [key]: withEmpty((value as PlainObject)[key], rest) };
}
