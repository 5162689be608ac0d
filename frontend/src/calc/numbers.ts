/** Exact decimals: how a number is read, added, divided, rounded and written. */

export type Rule = "half_even" | "half_up";

export const DIGITS_MAX = 30; // the same as the Python twin, whose precision must hold a product

// As far as a double holds them exactly: 10^22.
const POWERS_OF_TEN = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

const GRAMMAR = /^-?[0-9]+(\.[0-9]+)?$/;

/** A whole number of units and the count of places they stand for: 12.50 is 1250n and 2. */
export class Decimal {
  readonly units: bigint;
  readonly scale: number;

  constructor(units: bigint, scale: number) {
    this.units = units;
    this.scale = scale;
  }

  plus(other: Decimal): Decimal {
    const scale = Math.max(this.scale, other.scale);
    return new Decimal(this.unitsAt(scale) + other.unitsAt(scale), scale);
  }

  minus(other: Decimal): Decimal {
    const scale = Math.max(this.scale, other.scale);
    return new Decimal(this.unitsAt(scale) - other.unitsAt(scale), scale);
  }

  times(other: Decimal): Decimal {
    return new Decimal(this.units * other.units, this.scale + other.scale);
  }

  negated(): Decimal {
    return new Decimal(-this.units, this.scale);
  }

  abs(): Decimal {
    return this.units < 0n ? this.negated() : this;
  }

  compare(other: Decimal): -1 | 0 | 1 {
    const scale = Math.max(this.scale, other.scale);
    const [mine, theirs] = [this.unitsAt(scale), other.unitsAt(scale)];
    if (mine === theirs) return 0;
    return mine < theirs ? -1 : 1;
  }

  isZero(): boolean {
    return this.units === 0n;
  }

  isNegative(): boolean {
    return this.units < 0n;
  }

  toString(): string {
    const sign = this.units < 0n ? "-" : "";
    const digits = this.abs()
      .units.toString()
      .padStart(this.scale + 1, "0");
    const point = digits.length - this.scale;
    const fraction = this.scale > 0 ? `.${digits.slice(point)}` : "";
    return `${sign}${digits.slice(0, point)}${fraction}`;
  }

  /** The units this number has when it is written with more places. */
  private unitsAt(scale: number): bigint {
    return scale === this.scale ? this.units : this.units * tenTo(scale - this.scale);
  }
}

export const ZERO = new Decimal(0n, 0);
export const ONE = new Decimal(1n, 0);
export const HUNDRED = new Decimal(100n, 0);

/**
 * The number a wire text says, with the digits that were read ("12.50" keeps its zero).
 * Throws for anything else: exponents, signs but "-", spaces, more than 30 digits.
 */
export function parseDecimal(text: string): Decimal {
  const fraction = text.split(".")[1] ?? "";
  const digits = text.replace(/[-.]/g, "");
  if (!GRAMMAR.test(text) || digits.length > DIGITS_MAX) {
    throw new RangeError(`not a decimal: ${JSON.stringify(text)}`);
  }
  return new Decimal(BigInt(text.replace(".", "")), fraction.length);
}

/** The number as text with all its places kept, never with an exponent. */
export function written(x: Decimal): string {
  return x.toString();
}

/** The number as text without trailing zeros or exponent; zero is "0". */
export function plain(x: Decimal): string {
  const text = x.toString();
  return text.includes(".") ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
}

/** Exact sum; of nothing: 0. */
export function total(amounts: Iterable<Decimal>): Decimal {
  let soFar = ZERO;
  for (const amount of amounts) soFar = soFar.plus(amount);
  return soFar;
}

/** Exact a - b. */
export function difference(a: Decimal, b: Decimal): Decimal {
  return a.minus(b);
}

/** Exact a x b. */
export function product(a: Decimal, b: Decimal): Decimal {
  return a.times(b);
}

/**
 * x with this many places. A tie goes to the even digit (NIST SP 811 (2008) B.7.1);
 * "half_up" (away from zero) is for the rules that name it, such as 21 CFR 101.9(b)(5)(ix).
 */
export function rounded(x: Decimal, places: number, rule: Rule = "half_even"): Decimal {
  return divided(x, ONE, places, rule);
}

/**
 * a / b as an exact fraction, rounded once to this many places.
 * Throws RangeError for b = 0: a caller knows what a missing whole means, this does not.
 */
export function divided(a: Decimal, b: Decimal, places: number, rule: Rule = "half_even"): Decimal {
  if (b.isZero()) throw new RangeError("division by zero");
  const over = a.units * tenTo(b.scale + places);
  const under = b.units * tenTo(a.scale);
  const isNegative = over < 0n !== under < 0n;
  const units = roundedQuotient(magnitude(over), magnitude(under), rule);
  return new Decimal(isNegative ? -units : units, places);
}

/**
 * x to this many significant digits, ties to even, trailing zeros kept (NIST SP 811 B.7.1).
 * A double is taken at its exact binary value, so that both languages write the same text.
 */
export function significant(x: Decimal | number, digits: number): string {
  const exact = typeof x === "number" ? exactDecimal(x) : x;
  if (exact.isZero()) return "0";
  const places = digits - 1 - leadingPlace(exact);
  const short = roundedAt(exact, places);
  // 9.995 became 10.00: one place too many for three digits.
  const hasCarried = leadingPlace(short) > leadingPlace(exact);
  return written(hasCarried ? roundedAt(short, places - 1) : short);
}

/** The nearest double: only for what is measured (uncertainty, regression), never to add amounts with. */
export function asDouble(x: Decimal): number {
  const units = Number(x.units);
  const power = POWERS_OF_TEN[x.scale];
  // Both are exact, so their quotient is rounded once, as the text would be.
  const isExact = power !== undefined && Math.abs(units) <= Number.MAX_SAFE_INTEGER;
  return isExact ? units / power : Number(x.toString());
}

function tenTo(power: number): bigint {
  return 10n ** BigInt(power);
}

function magnitude(x: bigint): bigint {
  return x < 0n ? -x : x;
}

function roundedQuotient(over: bigint, under: bigint, rule: Rule): bigint {
  const whole = over / under;
  const twiceRest = 2n * (over % under);
  if (twiceRest < under) return whole;
  const isTie = twiceRest === under;
  const staysEven = isTie && rule === "half_even" && whole % 2n === 0n;
  return staysEven ? whole : whole + 1n;
}

/** Like `rounded`, but places may be negative: tens, hundreds. */
function roundedAt(x: Decimal, places: number): Decimal {
  if (places >= 0) return rounded(x, places);
  const step = new Decimal(tenTo(-places), 0);
  return divided(x, step, 0).times(step);
}

/** Power of ten of the first digit: 0 for 7.5, -2 for 0.041. */
function leadingPlace(x: Decimal): number {
  return magnitude(x.units).toString().length - 1 - x.scale;
}

/** Every double is a whole number over a power of two, so it has an exact decimal. */
function exactDecimal(x: number): Decimal {
  if (!Number.isFinite(x)) throw new RangeError("not a finite number");
  let [whole, halvings] = [x, 0];
  // Doubling is exact for doubles; the smallest has 1074 halvings.
  while (!Number.isInteger(whole)) {
    whole *= 2;
    halvings += 1;
  }
  return new Decimal(BigInt(whole) * 5n ** BigInt(halvings), halvings);
}
