import { fixed } from '../cut/fixed.ts';

/** Group codes and values, two lines each, as DXF files are made of. */
export class Tags {
  readonly #lines: string[] = [];

  /** A text or whole number behind its group code. */
  add(code: number, value: string | number): this {
    this.#lines.push(`${code}`.padStart(3), `${value}`);
    return this;
  }

  /** A length. */
  real(code: number, value: number, digits: number): this {
    return this.add(code, fixed(value, digits));
  }

  /** The whole text, with the line ends of the system that DXF comes from. */
  text(): string {
    return `${this.#lines.join('\r\n')}\r\n`;
  }
}
