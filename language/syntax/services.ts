// The Langium core services of Sprag, without anything of an editor. Knows no severities and no meaning.
import type { IToken } from "chevrotain";
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultLexer,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type LangiumParser,
  LangiumParserErrorMessageProvider,
  type LangiumSharedCoreServices,
  type LexerResult,
  type Module,
  prepareLangiumParser,
} from "langium";
import { SpragGeneratedModule, SpragGeneratedSharedModule } from "#grammar/generated/module.ts";
import { SpragTokenBuilder } from "#grammar/token-builder.ts";
import { scanUnit } from "#quantity/scan.ts";
import { lookAheadLate } from "./lookahead.ts";
import { SpragScopeProvider } from "./scope.ts";
import { TextConverter } from "./text-value.ts";

/**
 * Langium's lexer, which gives out comments one by one as Langium's parser comes to them (which cuts them off the front of one
 * array: quadratic in their number).
 */
export class SpragLexer extends DefaultLexer {
  private comments: readonly IToken[] = [];
  private nextComment = 0;

  /** The tokens and comments of a text, for others than the parser. */
  read(text: string): LexerResult {
    return super.tokenize(text);
  }

  override tokenize(text: string): LexerResult {
    const result = super.tokenize(text);
    const last = result.tokens[result.tokens.length - 1]?.startOffset ?? -1;
    this.comments = result.hidden.filter((comment) => comment.startOffset <= last);
    this.nextComment = 0;
    return { ...result, hidden: result.hidden.filter((comment) => comment.startOffset > last) };
  }

  /** The comments that stand before a token and were not given out yet. */
  commentsBefore(token: IToken): IToken[] {
    const first = this.nextComment;
    const { comments } = this;
    while ((comments[this.nextComment]?.startOffset ?? Number.POSITIVE_INFINITY) <= token.startOffset)
      this.nextComment++;
    return comments.slice(first, this.nextComment);
  }
}

function createParser(services: LangiumCoreServices): LangiumParser {
  const parser = prepareLangiumParser(services);
  lookAheadLate(parser);
  parser.finalize();
  const lexer = services.parser.Lexer as SpragLexer;
  Object.assign(parser, { extractHiddenTokens: (token: IToken) => lexer.commentsBefore(token) });
  return parser;
}

const SpragModule: Module<LangiumCoreServices, object> = {
  parser: {
    TokenBuilder: () => new SpragTokenBuilder(scanUnit),
    Lexer: (services: LangiumCoreServices) => new SpragLexer(services),
    LangiumParser: createParser,
    ValueConverter: () => new TextConverter(),
    // Recovery is our own (recover.ts): the stock one skips to a token that may lie in a later step.
    ParserConfig: () => ({
      recoveryEnabled: false,
      skipValidations: true,
      nodeLocationTracking: "full",
      errorMessageProvider: new LangiumParserErrorMessageProvider(),
    }),
  },
  references: { ScopeProvider: (services: LangiumCoreServices) => new SpragScopeProvider(services) },
};

/** Services for one session; cheap enough to make once per process, holds no documents of its own. */
export function createSpragServices(): { shared: LangiumSharedCoreServices; sprag: LangiumCoreServices } {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), SpragGeneratedSharedModule);
  const sprag = inject(createDefaultCoreModule({ shared }), SpragGeneratedModule, SpragModule);
  shared.ServiceRegistry.register(sprag);
  return { shared, sprag };
}
