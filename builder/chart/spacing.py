"""The distances of a chart, in points at the nominal text size of 10.

Small gaps make large text: a chart is scaled to its sheet as a whole. These are the least that kept
labels clear of lines and neighbors apart on printed charts.
"""

TEXT = 10.0  # nominal size of the words in a box
SMALL = 10.0  # labels, conditions, notes: as large, for all of it is read from the same place
LONGEST_WORD = 92.0  # a longer word is broken, so that one word never rules a whole chart
FLAG = 3.0  # room for the dark ground of a number that connectors lead to
BADGE = 2.4  # by which that ground stands out at either side of the number
TAG_SIDE = 1.5  # by which the ground of what a review says stands out at either side
BAR, BAR_GAP = 2.0, 1.5  # the bars of a review beside a box: their width, and before each
SIGNAL_GAP = 2.5  # between the ground of a signal word and the words under it
PAD_X = 4.5  # from the side of a box to its words
PAD_Y = 2.5
ROUND_END = 2.0  # further room at the rounded ends of a terminator
ROUND = 9.0  # radius of the corners of a terminator
DOUBLE_SIDE = 3.0  # between the two sides of a predefined process
TRUNK = 8.0  # from the left edge of a box to the line that runs straight down from it
BESIDE = 6.0  # from a line to the words beside it
INDENT = 10.0  # from a line to the boxes of its lane
ARROW = 9.0  # least length of a line with a head
LEAD_IN = 2.0  # below a box to the words beside the line
LABEL_GAP = 1.5  # from the words of a result to its box
ROW_GAP = 3.0
ENTRY = 9.5  # from the top of a box to the arrow that enters at its side
LEAST_GAP = 11.0  # of two boxes with a line down between them
NARROW = 100.0  # width of a box below which it would hold hardly more than a word a line
BETWEEN = 13.0  # from the checks to the line that their results leave from
CONNECTOR_HEIGHT = 13.0
SECTION_GAP = 9.0
COLUMN_GAP = 8.0
EDGE = 1.5  # half the heaviest border, kept free around the chart
