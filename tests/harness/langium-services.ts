// Langium's own services for the grammar, its parsers among them, to hold what Sprag does itself against.
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultValueConverter,
  EmptyFileSystem,
  type GrammarAST,
  inject,
  type LangiumCoreServices,
} from "langium";
import { SpragGeneratedModule, SpragGeneratedSharedModule } from "#grammar/generated/module.ts";
import { SpragTokenBuilder } from "#grammar/token-builder.ts";
import { scanUnit } from "#quantity/scan.ts";
import { textOf } from "#syntax/text-value.ts";

export function langiumServices(): LangiumCoreServices {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), SpragGeneratedSharedModule);
  const services = inject(createDefaultCoreModule({ shared }), SpragGeneratedModule, {
    parser: {
      TokenBuilder: () => new SpragTokenBuilder(scanUnit),
      ValueConverter: () => new TextConverter(),
      ParserConfig: () => ({ recoveryEnabled: false, skipValidations: true, nodeLocationTracking: "full" as const }),
    },
  });
  shared.ServiceRegistry.register(services);
  return services;
}

class TextConverter extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string): string {
    return textOf(rule.name, input);
  }
}
