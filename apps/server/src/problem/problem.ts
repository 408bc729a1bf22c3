import { HttpException } from '@nestjs/common';
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';

/** One thing wrong with what was sent: a place in the JSON, or a row and column of a file. */
export class ProblemError {
  @ApiProperty({ description: 'short stable word for the kind of trouble', example: 'not-a-length' })
  code: string;

  @ApiProperty({ description: 'what is wrong and what to do' })
  detail: string;

  @ApiPropertyOptional({ description: 'place in the JSON that was sent (RFC 6901)', example: '/caps/0/cap_cents' })
  pointer?: string;

  @ApiPropertyOptional({ description: 'name of the file', example: 'windows.csv' })
  file?: string;

  @ApiPropertyOptional({ type: 'integer', description: 'line of the file, counted from 1' })
  row?: number;

  @ApiPropertyOptional({ description: 'header of the column' })
  column?: string;
}

/** Every answer that is not a success (RFC 9457, application/problem+json). */
export class Problem {
  @ApiProperty({ description: 'names the kind of problem; about:blank where the status says it all', example: 'about:blank' })
  type: string;

  @ApiProperty({ example: 'Not Found' })
  title: string;

  @ApiProperty({ type: 'integer', example: 404 })
  status: number;

  @ApiProperty({ description: 'this case, in one sentence for a person' })
  detail: string;

  @ApiProperty({ description: 'what was asked for', example: '/api/plans/P-9' })
  instance: string;

  @ApiPropertyOptional({ type: () => [ProblemError] })
  errors?: ProblemError[];
}

/** Says no to a request, with all its errors at once. */
export class ProblemException extends HttpException {
  constructor(
    status: number,
    readonly detail: string,
    readonly errors: readonly ProblemError[] = [],
  ) {
    super(detail, status);
  }
}
