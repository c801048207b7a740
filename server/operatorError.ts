/** Something that whoever runs the service can put right; the message is one line that says what. */
export class OperatorError extends Error {
  override readonly name = 'OperatorError';
}
