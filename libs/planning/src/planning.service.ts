import { type Catalogue, openCatalogue, programVersion } from '#catalogue';
import { contentHash, type PortfolioStore } from '#store';
import { askedPortfolio, type PlanAsk } from './job/asked-portfolio.js';
import { temperaturesBeside } from './bills/temperature-file.js';
import { buildingWeather } from './job/building-weather.js';
import { defaultsOf } from './job/plan-job.js';
import { planPortfolio } from './plan-portfolio.js';
import { carriedFindings } from './plan/carried-findings.js';
import type { Plan } from './plan/plan.js';
import { bestUseNow, type NowAnswer, type NowQuestion } from './crew/best-use-now.js';
import type { CutRule, LotRule } from './rolls/cut-types.js';
import { type NoSuchFigure, type Receipt, receiptOf, type SurveyAgain, surveyAgain } from './receipt/index.js';
import { afterWork, type AfterWorkRequest } from './record/after-work.js';
import type { OutlookOrder } from './uncertainty/outlook.js';
import type { BetterPlan, Progress, Workers } from './workers.js';

/** A plan to be made: what the edge of the program knows and calc may not ask for. */
export interface PlanOrder {
  readonly ask: PlanAsk;
  readonly id: string;
  /** ISO date and time. */
  readonly made: string;
  /** Path of a weather file named in the inventory. */
  readonly resolve: (file: string) => string;
  /** Seconds a round of the selection may take; what it reached is said with its bound. */
  readonly timeLimit_s: number;
  /** How many draws of what is not known. */
  readonly outlook?: OutlookOrder;
  /** What the choice aims at: the middle by default. */
  readonly aim?: 'middle' | 'nine-in-ten';
  readonly progress?: Progress;
  /** Goes on with the choice until it is proved or these seconds are used; each better plan is told. */
  readonly prove_s?: number;
  readonly better?: (found: BetterPlan) => void;
  /** How the pieces of a phase share its rolls: the least film by default. */
  readonly cutRule?: CutRule;
  /** Whether lots of film may be mixed on an elevation; one lot each by default. */
  readonly lotRule?: LotRule;
  /** A kept plan to start from: what was recorded on it stands, the rest is planned again. */
  readonly replan?: string;
}

/** What the built-in data say about work on site. */
const siteRules = (catalogue: Catalogue): Pick<AfterWorkRequest, 'timeModel' | 'contractorMakesGood'> => ({ timeModel: catalogue.timeModel, contractorMakesGood: defaultsOf(catalogue)<boolean>('contractorMakesGood').value });

/** Makes plans of the kept portfolio and keeps them: opens the built-in data once, reads weather, runs the spine on the workers it is given. */
export class PlanningService {
  #catalogue: Catalogue | undefined;

  constructor(
    private readonly workers: Workers,
    private readonly store: PortfolioStore,
  ) {}

  async make(order: PlanOrder): Promise<Plan> {
    const builtIn = (this.#catalogue ??= openCatalogue());
    const asked = askedPortfolio(await this.store.load(), order.ask);
    const parent = order.replan === undefined ? null : await this.#kept(order.replan);
    const after = parent === null ? null : afterWork({ portfolio: asked, plan: parent, asOf: order.made.slice(0, 10), ...siteRules(builtIn) });
    const portfolio = after?.portfolio ?? asked;
    const catalogue = after === null ? builtIn : { ...builtIn, timeModel: { ...builtIn.timeModel, ...after.time.model } };
    const { weather, findings } = buildingWeather(portfolio.buildings, catalogue, order.resolve);
    const { id, made, timeLimit_s, progress, outlook } = order;
    const plan = await planPortfolio(
      {
        portfolio, catalogue, weather, id, timeLimit_s,
        revision: (parent?.revision ?? 0) + 1,
        parent: parent?.id ?? null,
        ...(after === null ? {} : { settled: after.settled }),
        madeOn: made.slice(0, 10),
        program: programVersion(),
        inputHash: contentHash(portfolio),
        findings: [...carriedFindings(await this.store.findings()), ...findings, ...(after?.findings ?? [])],
        temperatures: temperaturesBeside(order.resolve),
        ...(order.cutRule === undefined ? {} : { cutRule: order.cutRule }),
        ...(order.lotRule === undefined ? {} : { lotRule: order.lotRule }),
        ...(progress === undefined ? {} : { progress }),
        ...(order.prove_s === undefined ? {} : { prove_s: order.prove_s }),
        ...(order.better === undefined ? {} : { better: order.better }),
        ...(outlook === undefined ? {} : { outlook }),
        ...(order.aim === undefined ? {} : { aim: order.aim }),
      },
      this.workers,
    );
    await this.store.savePlan({ id, title: plan.name, parent: plan.parent, made, programVersion: plan.program, inputsHash: plan.inputHash, signed: false, body: plan });
    return plan;
  }

  /** The best use of some hours with film on the shelf; nothing is kept. */
  async bestUse(order: Pick<PlanOrder, 'id' | 'made' | 'resolve'>, question: NowQuestion): Promise<NowAnswer> {
    const catalogue = (this.#catalogue ??= openCatalogue());
    const kept = await this.store.load();
    const madeOn = order.made.slice(0, 10);
    // Windows that carry film already are no use of the time.
    const newest = (await this.store.plans())[0];
    const portfolio = newest === undefined ? kept : afterWork({ portfolio: kept, plan: await this.#kept(newest.id), asOf: madeOn, ...siteRules(catalogue) }).portfolio;
    const { weather } = buildingWeather(portfolio.buildings, catalogue, order.resolve);
    return bestUseNow({ portfolio, catalogue, weather, id: order.id, revision: 1, parent: null, madeOn, program: programVersion(), inputHash: contentHash(portfolio), findings: [] }, this.workers, question);
  }

  /** Opens a figure of a kept plan. Figures that hang on hours read the survey as it is kept now and are held against the plan. */
  async receipt(plan: Plan, figure: string, resolve: PlanOrder['resolve']): Promise<Receipt | NoSuchFigure> {
    const catalogue = (this.#catalogue ??= openCatalogue());
    let read: Promise<SurveyAgain> | undefined;
    const survey = (): Promise<SurveyAgain> => (read ??= this.#surveyOf(plan, catalogue, resolve));
    return receiptOf(figure, { plan, catalogue, survey });
  }

  /** The survey a plan was made from, as far as it is still kept: a revision starts from what was done on its parent. */
  async #surveyOf(plan: Plan, builtIn: Catalogue, resolve: PlanOrder['resolve']): Promise<SurveyAgain> {
    const kept = await this.store.load();
    const parent = plan.parent === null ? null : await this.#kept(plan.parent);
    const after = parent === null ? null : afterWork({ portfolio: kept, plan: parent, asOf: plan.madeOn, ...siteRules(builtIn) });
    const portfolio = after?.portfolio ?? kept;
    const { weather } = buildingWeather(portfolio.buildings, builtIn, resolve);
    const { id, revision, madeOn, program, inputHash } = plan;
    const job = { portfolio, catalogue: builtIn, weather, id, revision, parent: plan.parent, madeOn, program, inputHash, findings: [], temperatures: temperaturesBeside(resolve) };
    return surveyAgain(job, { plan, work: this.workers, resolve });
  }

  /** @throws RangeError when the plan is not kept */
  async #kept(id: string): Promise<Plan> {
    const found = await this.store.loadPlan(id);
    if (found === null) throw new RangeError(`plan to start from must be kept, got ${id}`);
    return found.body as Plan;
  }
}
