"""What a walk shows at its step, computed from the tables and the state alone.

In: `WalkTables`, a `WalkState`. Out: a map for JSON; what would be empty is left out.

| key | holds |
|---|---|
| `phase` | `start`, `fill`, `step`, `verify`, `end`, `paused` |
| `in`, `step`, `kind`, `text` | where the walk is; text with placeholders filled in, as all texts here |
| `inside` | titles from the tree to the procedure that runs |
| `item` | the item of the list that is gone through |
| `asks` | phase `fill`: what is to be filled in, `{"name", "ask", "one_of"}` |
| `lines` | what to do before the answer: `{"text", "of", "ticked"}`; `of` is `change`, `do`, `after`
  (a change after the lines to hook up), `put back`. `tick` counts them from 0 |
| `now` | texts of the states that hold at the step |
| `hazards` | `{"id", "full"}`, most severe first; `full`: new, or DANGER; else one line |
| `unread` | hazards to acknowledge before the step is answered or done |
| `when`, `note`, `at`, `write_down` | as in the step |
| `minutes`, `wait` | of the step and its changes, as text |
| `visit` | `[2, 3]`: the second time of at most three |
| `results` | `{"text", "means"}` in the order of the step |
| `ranges` | by reading, with a vehicle's spec: the good range as two cuts |
| `procedure` | of a check with `by`: `{"id", "title"}` |
| `earlier` | what the same procedure proved earlier in the job: `{"word", "step"}` |
| `verify` | phase `verify`: `{"index", "count", "text"}` |
| `end` | as in the record; `call` the person to call, `rejoin` the step to go back to |
| `drive`, `why` | what holds for driving the vehicle as it is |
"""
