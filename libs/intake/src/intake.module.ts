import { Module } from '@nestjs/common';
import { IntakeService } from './intake.service.js';

/** Intake for a Nest application; the store's own module provides the store. */
@Module({ providers: [IntakeService], exports: [IntakeService] })
export class IntakeModule {}
