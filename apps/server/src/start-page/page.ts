import { html, type Html } from './html.js';

/** Black on white with lines, so that it prints as it is; nothing is said by colour. Text on white has a contrast of 7 to 1 or more. */
const STYLE = `
  body { font: 1rem/1.5 system-ui, sans-serif; max-width: 62rem; margin: 1rem auto 3rem; padding: 0 1rem; color: #1a1a1a; background: #fff; }
  h1 { font-size: 1.75rem; margin: 0.5rem 0; }
  h2 { font-size: 1.3rem; margin: 2rem 0 0.5rem; border-bottom: 2px solid #1a1a1a; }
  h3 { font-size: 1.05rem; margin: 0.5rem 0; }
  .table { overflow-x: auto; margin: 0.5rem 0 1rem; }
  table { border-collapse: collapse; }
  caption { text-align: left; font-weight: bold; padding: 0.25rem 0; }
  th, td { border: 1px solid #767676; padding: 0.25rem 0.6rem; text-align: left; vertical-align: top; }
  td.number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
  dl { display: grid; grid-template-columns: minmax(12rem, 20rem) 1fr; gap: 0.25rem 1rem; }
  dt { font-weight: 600; } dd { margin: 0; }
  .readers { display: grid; grid-template-columns: repeat(auto-fit, minmax(17rem, 1fr)); gap: 1rem; }
  .readers section { border: 1px solid #767676; padding: 0 1rem; }
  ul { padding-left: 1.2rem; margin: 0.25rem 0 0.75rem; }
  form { margin: 0.5rem 0; }
  button, input { font: inherit; min-height: 2.5rem; max-width: 100%; }
  button { padding: 0 1rem; border: 2px solid #1a1a1a; border-radius: 0.25rem; background: #fff; color: inherit; cursor: pointer; }
  a { color: #0b4f9e; }
  li a { display: block; padding: 0.125rem 0; }
  td a { display: inline-block; min-height: 1.5rem; padding: 0.125rem 0; }
  a:focus-visible, button:focus-visible, input:focus-visible, summary:focus-visible, .table:focus-visible { outline: 3px solid #1a1a1a; outline-offset: 2px; }
  pre { overflow-x: auto; }
  @media (max-width: 36rem) { dl { grid-template-columns: 1fr; } dd { margin-bottom: 0.5rem; } th, td { padding: 0.25rem 0.3rem; } }
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
