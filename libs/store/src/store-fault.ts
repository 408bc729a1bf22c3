/** Something a person can put right about the database; the message is the whole sentence to show. */
export class StoreFault extends Error {
  override readonly name = 'StoreFault';
}
