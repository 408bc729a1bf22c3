import { programVersion } from '#catalogue';
import { Controller, Get, Injectable } from '@nestjs/common';
import { ApiExcludeController, DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { ProblemException } from './problem/problem.js';

/** Holds the description of the API, which can be written only when the whole application is put together. */
@Injectable()
export class ApiDescription {
  #document: OpenAPIObject | null = null;

  describe(app: NestExpressApplication): void {
    const of = new DocumentBuilder()
      .setOpenAPIVersion('3.1.0')
      .setTitle('Film Rollout')
      .setDescription('Survey files in; ranked dwellings and facades, a plan under the caps with its bound, and a workbook out. Every error is application/problem+json (RFC 9457).')
      .setVersion(programVersion())
      .addServer('/')
      .build();
    this.#document = SwaggerModule.createDocument(app, of);
  }

  get document(): OpenAPIObject {
    if (this.#document === null) throw new ProblemException(503, 'The server is still starting.');
    return this.#document;
  }
}

@ApiExcludeController()
@Controller('api/openapi.json')
export class ApiDescriptionController {
  constructor(private readonly description: ApiDescription) {}

  @Get()
  read(): OpenAPIObject {
    return this.description.document;
  }
}
