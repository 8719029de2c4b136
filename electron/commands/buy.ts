import { finish, refused } from './commandLine.ts'

finish(
  refused([
    {
      code: 'not-yet',
      field: 'buy',
      message:
        'not yet: buying plans are not worked out by this version; the cut list of `card` gives the lengths',
    },
  ]),
)
