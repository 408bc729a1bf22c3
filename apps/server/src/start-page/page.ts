import { html, type Html } from './html.js';

const STYLE = `
  body { font: 1rem/1.5 system-ui, sans-serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; color: #1a1a1a; background: #fff; }
  table { border-collapse: collapse; margin: 0.5rem 0 1rem; }
  th, td { border: 1px solid #767676; padding: 0.25rem 0.6rem; text-align: left; vertical-align: top; }
  td.number { text-align: right; font-variant-numeric: tabular-nums; }
  button, input { font: inherit; min-height: 2rem; }
  a { color: #0b4f9e; }
`;

/** A whole page. No script is used or allowed. */
export function page(title: string, content: Html): string {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="/style.css">
</head>
<body>
<main>
<h1>${title}</h1>
${content}
</main>
</body>
</html>
`.text;
}

export const style = STYLE;
