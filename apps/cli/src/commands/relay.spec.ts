import { Command } from 'commander';
import { relay } from './relay.js';

describe('help of relay', () => {
  it('says that --cut-to keeps cut pieces in place, and what happens without it', () => {
    const program = new Command();
    relay(program);
    const { description } = program.commands[0]!.options.find((o) => o.long === '--cut-to')!;
    expect(description).toMatch(/keep their place.*without it.*whole roll/);
  });
});
