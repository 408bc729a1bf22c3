import { andOf, inEnglish, type Language, planSentences, tell, told, toldWord } from './told.js';

// Polish has three forms: 1 szyba, 2 szyby, 5 szyb (Unicode CLDR plural rules).
const polish: Language = {
  language: 'pl-PL',
  sentences: { ...planSentences, 'count.panes': '{count} szyb', 'count.panes.one': '{count} szyba', 'redo.defect': 'zrobić ponownie' },
  more: { 'count.panes.few': '{count} szyby', 'rule.wired': 'Szkło zbrojone.' },
};

describe('a sentence of the table', () => {
  it('takes the form its language has for a count', () => {
    expect([1, 2, 0].map((count) => inEnglish(told('count.panes', { count })))).toEqual(['1 pane', '2 panes', '0 panes']);
    expect([1, 2, 5, 22].map((count) => tell(told('count.panes', { count }), polish))).toEqual(['1 szyba', '2 szyby', '5 szyb', '22 szyby']);
  });

  it('says the sentences inside it in the same language, and data as it stands', () => {
    const sentence = told('redo.noted', { why: told('redo.seen', { why: told('redo.defect'), day: '2026-08-04' }), note: 'CREASE' });
    expect(inEnglish(sentence)).toBe('do again, seen 2026-08-04: CREASE');
    expect(tell(sentence, polish)).toBe('zrobić ponownie, seen 2026-08-04: CREASE');
  });

  it('joins lists, and two things with the word for it', () => {
    expect(inEnglish(told('consent.waits', { letters: ['a', told('consent.letter', { building: 'B1', kind: 'board' })] }))).toBe('waits for a; B1: board');
    expect(inEnglish(told('step.cut', { films: andOf([told('step.film', { film: 'A' }), told('step.film', { film: 'B' })]) }))).toContain('Cut film A and film B from the roll');
  });

  it('says a rule in its own words where the table does not know it', () => {
    const rule = { key: 'rule.wired', otherwise: 'Wired glass.' };
    expect(inEnglish(rule)).toBe('Wired glass.');
    expect(tell(rule, polish)).toBe('Szkło zbrojone.');
    expect(tell({ key: 'rule.of-a-user', otherwise: 'Glass painted by a tenant.' }, polish)).toBe('Glass painted by a tenant.');
    expect(inEnglish(toldWord('defect', 'XX'))).toBe('XX');
  });

  it('leaves a hole open rather than empty, so that a test finds it', () => expect(tell({ key: 'redo.noted', with: { why: 'x' } }, polish)).toBe('x: {note}'));
});
