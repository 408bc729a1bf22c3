import type { Consent } from '#calc';
import { type ConsentQuestion, consentState } from './consent-state.js';

const consent = (over: Partial<Consent>): Consent => ({
  id: 'C1', building: 'B', kind: 'glass maker', glazing: 'bronze-6', film: 'A', window: null, state: 'given', date: null, reference: null,
  inventoryRow: { file: 'consents.csv', row: 2 }, ...over,
});
const question = (over: Partial<ConsentQuestion> = {}): ConsentQuestion => ({ building: 'B', glazing: 'bronze-6', surveyedGlazing: null, film: 'A', window: 'B/1/W01', outcome: 'written-consent-needed', ...over });

describe('consent of a pane', () => {
  it('is not needed where no trigger is listed and nothing is on file', () => {
    expect(consentState(question({ outcome: 'no-listed-trigger' }), [])).toMatchObject({ state: 'free', waitsFor: [] });
  });
  it('waits when a trigger is listed and no letter is on file', () => {
    expect(consentState(question(), []).state).toBe('waiting');
  });
  it('waits when a letter was asked for and no date is known', () => {
    expect(consentState(question(), [consent({ state: 'asked' })]).state).toBe('waiting');
  });
  it('holds from the date a letter is given or expected', () => {
    expect(consentState(question(), [consent({ state: 'asked', date: '2027-03-01' })])).toMatchObject({ state: 'from', date: '2027-03-01' });
  });
  it('takes the latest of several dates', () => {
    const board = consent({ id: 'C2', kind: 'association', glazing: null, film: null, state: 'asked', date: '2028-01-15' });
    expect(consentState(question(), [consent({ date: '2026-08-01' }), board])).toMatchObject({ state: 'from', date: '2028-01-15' });
  });
  it('is out once refused, whatever else is on file', () => {
    expect(consentState(question(), [consent({}), consent({ id: 'C3', kind: 'listing', state: 'refused' })]).state).toBe('refused');
  });
  it('of the owner does not answer a question about the glass', () => {
    expect(consentState(question(), [consent({ kind: 'owner' })]).state).toBe('waiting');
  });
  it('for another film or glazing does not count', () => {
    expect(consentState(question({ film: 'B' }), [consent({})]).state).toBe('waiting');
    expect(consentState(question({ glazing: 'clear-3' }), [consent({})]).state).toBe('waiting');
  });
});
