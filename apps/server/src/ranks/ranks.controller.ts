import { Controller, Get, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { KeptPlans, type RankLists } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { DwellingRankPage, FacadeRankPage, RankQuery } from './rank-answer.js';

type ListName = keyof RankLists;

@ApiTags('ranks')
@ApiProblem(404, 'No plan has been made yet, or the plan named is not kept')
@Controller('api/ranks')
export class RanksController {
  constructor(private readonly plans: KeptPlans) {}

  @Get('dwellings')
  @ApiOperation({ summary: 'Dwellings by expected yearly cooling-cost reduction per dollar of film' })
  @ApiOkResponse({ type: DwellingRankPage, headers: { Link: { description: 'rel="next" where there is more', schema: { type: 'string' } } } })
  dwellings(@Query() query: RankQuery, @Res({ passthrough: true }) response: Response): Promise<DwellingRankPage> {
    return this.#page('rankedDwellings', query, response);
  }

  @Get('facades')
  @ApiOperation({ summary: 'Facades of dwellings in the same order' })
  @ApiOkResponse({ type: FacadeRankPage, headers: { Link: { description: 'rel="next" where there is more', schema: { type: 'string' } } } })
  facades(@Query() query: RankQuery, @Res({ passthrough: true }) response: Response): Promise<FacadeRankPage> {
    return this.#page('rankedFacades', query, response);
  }

  async #page<List extends ListName>(list: List, { plan: wanted, limit = 100, after = 0 }: RankQuery, response: Response) {
    const { id, body } = await this.plans.planOrNewest(wanted);
    const lines = body[list];
    const end = after + limit;
    const path = list === 'rankedDwellings' ? 'dwellings' : 'facades';
    const next = end < lines.length ? `/api/ranks/${path}?plan=${encodeURIComponent(id)}&limit=${limit}&after=${end}` : null;
    if (next !== null) response.setHeader('Link', `<${next}>; rel="next"`);
    return { plan: id, total: lines.length, next, items: lines.slice(after, end) as RankLists[List][number][] };
  }
}
