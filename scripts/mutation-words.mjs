// Which words are not mutated: the text of an error, of a reason, of what a finding saw and expected. That it is thrown or given, and where, is.
import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

const isError = (path) => path.isNewExpression() && /Error$/.test(path.node.callee.name ?? '');
const isReason = (path) => path.isObjectProperty() && ['why', 'seen', 'expected'].includes(path.node.key.name);

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Ignore, 'words', {
    shouldIgnore(path) {
      if (!path.isStringLiteral() && !path.isTemplateLiteral()) return undefined;
      return path.findParent((parent) => isError(parent) || isReason(parent)) ? 'words of an error or a reason' : undefined;
    },
  }),
];
