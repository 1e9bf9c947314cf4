/**
 * What the elements look like: as the pictures do, by day and by night. A page sets other colours through the same custom
 * properties, and whatever else through the parts.
 */

export const sheet = new CSSStyleSheet();

sheet.replaceSync(`
  :host {
    --paper: var(--evenstep-paper, #f5f7f4);
    --ink: var(--evenstep-ink, #13232c);
    --quiet: var(--evenstep-quiet, #475862);
    --line: var(--evenstep-served, #bfd9d4);
    --new: var(--evenstep-new, #7d4a00);
    display: block;
    max-width: var(--evenstep-width, 34rem);
    font-family: var(--evenstep-font, system-ui, sans-serif);
    line-height: 1.45;
    color: var(--ink);
  }

  @media (prefers-color-scheme: dark) {
    :host {
      --paper: var(--evenstep-paper, #0d1920);
      --ink: var(--evenstep-ink, #e7eeeb);
      --quiet: var(--evenstep-quiet, #aabac0);
      --line: var(--evenstep-served, #2a5154);
      --new: var(--evenstep-new, #f3c56b);
    }
  }

  :host([hidden]) { display: none; }
  :host(:state(asking)) .content { opacity: 0.6; }
  .content { min-height: 6rem; }
  svg { display: block; width: 100%; height: auto; }

  .advice { padding: 1.25rem; border-radius: 0.75rem; background: var(--paper); overflow-wrap: anywhere; }
  .advice svg { margin-top: 1rem; }
  h2, p, ol { margin: 0; }
  h2 { font-size: 1.15rem; line-height: 1.3; }
  ol { margin-top: 0.75rem; padding: 0; list-style: none; }
  li { padding: 0.75rem 0; border-top: 1px solid var(--line); }
  .item { display: flex; gap: 1rem; justify-content: space-between; font-weight: 700; color: var(--new); }
  .item a { color: inherit; text-underline-offset: 0.2em; }
  .item a:focus-visible { outline: 2px solid currentColor; outline-offset: 2px; }
  .price { flex: none; font-variant-numeric: tabular-nums; }
  .total { padding-top: 0.75rem; border-top: 1px solid var(--line); font-weight: 700; text-align: end; font-variant-numeric: tabular-nums; }
  .served, .note, .caution, .reason { color: var(--quiet); }
  .served, .note, .caution { margin-top: 0.75rem; }
  .reason, .caution { font-size: 0.9rem; }
  .failure { padding: 1.25rem; border-radius: 0.75rem; background: var(--paper); overflow-wrap: anywhere; }
`);
