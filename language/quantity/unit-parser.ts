// Reads a unit expression into its factors: names with exponents. Knows no unit, only how expressions are built.
import { createToken, EmbeddedActionsParser, type IToken, Lexer } from "chevrotain";

/** One name in a unit expression; below the line the exponent is negative. */
export interface Factor {
  readonly name: string;
  readonly exponent: number;
}

/** The factors in the order written, and the signs used between them; null where the text is no unit expression. */
export interface Factors {
  readonly factors: readonly Factor[];
  /** Whether a hyphen stands for a product, as in `ft-lb`. */
  readonly hyphen: boolean;
}

/** No unit a person writes has more characters; nested parentheses must not run away either. */
export const LONGEST_UNIT = 60;

/** Reads `µm/(m·K)`, `kg*m^2`, `N.m`, `1/s`, `m s⁻¹` without the blank; total. */
export function parseUnitExpression(text: string): Factors | null {
  if (text.length > LONGEST_UNIT) return null;
  const lexed = lexer.tokenize(text);
  if (lexed.errors.length > 0 || lexed.tokens.length === 0) return null;
  parser.input = lexed.tokens;
  const factors = parser.expression();
  if (parser.errors.length > 0 || factors === undefined) return null;
  return { factors, hyphen: lexed.tokens.some((token) => token.tokenType === Hyphen) };
}

const Name = createToken({
  name: "Name",
  pattern: /dB\([Aa]\)|(?:psi|bar)\([ag]\)|o['’]clock|[A-Za-zµ]*H[2₂]O|[°º][A-Za-z]?|[A-Za-zµΩ_ₙ]+|[%‰′″'"℃℉]/,
});
const Product = createToken({ name: "Product", pattern: /[·*.×]/ });
const Hyphen = createToken({ name: "Hyphen", pattern: /-(?=[A-Za-zµ])/ });
const Per = createToken({ name: "Per", pattern: /\// });
const Power = createToken({ name: "Power", pattern: /\^[-−]?\d|\^\([-−]?\d\)|⁻?[¹²³⁴⁵⁶]|[23]/ });
const One = createToken({ name: "One", pattern: /1/ });
const Open = createToken({ name: "Open", pattern: /\(/ });
const Close = createToken({ name: "Close", pattern: /\)/ });
const TOKENS = [Name, Product, Hyphen, Per, Power, One, Open, Close];

const lexer = new Lexer(TOKENS, { positionTracking: "onlyOffset" });

class UnitParser extends EmbeddedActionsParser {
  constructor() {
    // The self-validation of the grammar needs a newer JavaScript than Node 20 has; the tests do its work.
    super(TOKENS, { maxLookahead: 1, skipValidations: true });
    this.performSelfAnalysis();
  }

  readonly expression = this.RULE("expression", (): readonly Factor[] => {
    let factors: readonly Factor[] = this.SUBRULE(this.factor);
    this.MANY(() => {
      const below = this.OR([
        { ALT: () => this.CONSUME(Product) && false },
        { ALT: () => this.CONSUME(Hyphen) && false },
        { ALT: () => this.CONSUME(Per) && true },
      ]);
      // A quotient binds the one factor that follows it: `J/kg/K` divides twice, `W/(m·K)` needs its parentheses.
      const next = this.SUBRULE2(this.factor);
      this.ACTION(() => {
        factors = [...factors, ...raised(next, below ? -1 : 1)];
      });
    });
    return factors;
  });

  readonly factor = this.RULE("factor", (): readonly Factor[] => {
    const base = this.OR([
      { ALT: () => [{ name: this.CONSUME(Name).image, exponent: 1 }] },
      { ALT: () => this.CONSUME(One) && [] },
      {
        ALT: () => {
          this.CONSUME(Open);
          const inner = this.SUBRULE(this.expression);
          this.CONSUME(Close);
          return inner;
        },
      },
    ]);
    const sign = this.OPTION(() => this.CONSUME(Power));
    return this.ACTION(() => (sign === undefined ? base : raised(base, exponentOf(sign))));
  });
}

const parser = new UnitParser();

function raised(factors: readonly Factor[], by: number): readonly Factor[] {
  return factors.map((factor) => ({ name: factor.name, exponent: factor.exponent * by }));
}

const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶";

function exponentOf(token: IToken): number {
  const negative = /[-−⁻]/.test(token.image);
  const last = /[\d¹²³⁴⁵⁶]/.exec(token.image)?.[0] ?? "1";
  const size = SUPERSCRIPTS.includes(last) ? SUPERSCRIPTS.indexOf(last) : Number(last);
  return negative ? -size : size;
}
