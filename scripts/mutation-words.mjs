// Which words are not mutated: the text of an error or of a reason. That it is thrown or given is.
import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

const isError = (path) => path.isNewExpression() && /Error$/.test(path.node.callee.name ?? '');
const isReason = (path) => path.isObjectProperty() && path.node.key.name === 'why';

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Ignore, 'words', {
    shouldIgnore(path) {
      if (!path.isStringLiteral() && !path.isTemplateLiteral()) return undefined;
      return path.findParent((parent) => isError(parent) || isReason(parent)) ? 'words of an error or a reason' : undefined;
    },
  }),
];
