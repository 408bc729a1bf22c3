import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, flag, json, key, longText, real, table, text, whole } from './table-columns.js';

const TABLES = [
  table('locks', {
    columns: [
      key('id'),
      text('subject'),
      text('direction'),
      real('azimuth_deg', 'blank'),
      text('phase', 'blank'),
      text('film', 'blank'),
      text('reason'),
      text('role'),
      day('date'),
    ],
    indexes: { locks_by_subject: ['subject'] },
    checks: { locks_direction: "direction IN ('in', 'out')" },
  }),
  table('plans', {
    columns: [
      key('id'),
      text('title'),
      whole('revision'),
      text('parent', 'blank'),
      text('made'),
      text('program_version'),
      text('inputs_hash'),
      text('hash'),
      flag('signed'),
      longText('body'),
    ],
    indexes: { plans_by_parent: ['parent'] },
    checks: { plans_revision: 'revision >= 1' },
  }),
  table('imports', {
    columns: [
      key('id'),
      text('file'),
      text('sha256'),
      text('at'),
      text('encoding', 'blank'),
      whole('rows_read'),
      whole('created'),
      whole('updated'),
      whole('unchanged'),
      whole('rejected'),
    ],
    indexes: { imports_by_hash: ['sha256'] },
    checks: { imports_counts: 'rows_read >= 0 AND created >= 0 AND updated >= 0 AND unchanged >= 0 AND rejected >= 0' },
  }),
  table('jobs', {
    columns: [
      key('id'),
      text('kind'),
      text('state'),
      json('input', 'blank'),
      real('progress'),
      text('stage', 'blank'),
      json('result', 'blank'),
      text('why', 'blank'),
      text('made'),
      text('started', 'blank'),
      text('ended', 'blank'),
    ],
    indexes: { jobs_by_state: ['state'] },
    checks: { jobs_state: "state IN ('waiting', 'running', 'done', 'failed')", jobs_progress: 'progress BETWEEN 0 AND 1' },
  }),
];

/** What people decide and what the program made of it: locks, plans, imports, jobs. */
export class Plans1767225780000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const each of TABLES) await runner.createTable(new Table(each));
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const each of [...TABLES].reverse()) await runner.dropTable(each.name);
  }
}
