import { Controller, Get, Header, Param, StreamableFile } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import { calendarFile, type PlanCalendar } from '#planning';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';

const CALENDAR = 'text/calendar; charset=utf-8';

@ApiTags('crew')
@Controller('api/plans')
export class CalendarController {
  constructor(private readonly plans: KeptPlans) {}

  @Get(':id/calendar')
  @ApiOperation({ summary: 'The working days of a plan: visits by day and crew, work no day was found for, days kept in reserve' })
  @ApiOkResponse({ schema: { type: 'object', additionalProperties: true } })
  @ApiProblem(404)
  async days(@Param('id') id: string): Promise<PlanCalendar> {
    return (await this.plans.plan(id)).body.calendar;
  }

  @Get(':id/calendar.ics')
  @Header('Cache-Control', 'no-cache')
  @ApiOperation({ summary: 'The working days of a plan as iCalendar (RFC 5545)', description: 'Times in UTC where the daylight rule of the building is known, else wall-clock times without a zone (floating); ids stay the same for the same plan. A day of a contractor says so in title and text.' })
  @ApiProduces('text/calendar')
  @ApiOkResponse({ content: { 'text/calendar': { schema: { type: 'string' } } } })
  @ApiProblem(404)
  async calendar(@Param('id') id: string): Promise<StreamableFile> {
    const { body } = await this.plans.plan(id);
    return new StreamableFile(Buffer.from(await calendarFile(body)), { type: CALENDAR, disposition: `attachment; filename="rollout-${id.replace(/[^\w.-]/g, '_')}.ics"` });
  }
}
