using RoutingRules.Reports.Lists;

namespace RoutingRules.Reports.Riders;

/// <summary>Which column of a table of a rider says what, by the words that bands write over them.</summary>
internal sealed class RiderColumns
{
    // Common practice, no source.
    private static readonly (string Column, string[] Headers)[] Inputs =
    [
        ("number", ["ch", "ch.", "chan", "channel", "no", "no.", "nr", "nr.", "#", "number"]),
        ("what", ["instrument", "source", "input", "name", "what", "item"]),
        ("equipment", ["mic", "mics", "mic/di", "mic/d.i.", "micordi", "microphone", "microphone/di", "microphoneordi", "di", "pickup"]),
        ("phantom", ["48v", "+48v", "+48", "48", "p48", "phantom", "phantompower"]),
        ("stand", ["stand", "stands", "micstand"]),
        ("position", ["position", "place", "where", "location", "stageposition", "pos", "pos."]),
        ("remarks", ["remarks", "remark", "notes", "note", "comment", "comments", "info"]),
    ];

    private static readonly (string Column, string[] Headers)[] Mixes =
    [
        ("number", ["mix", "mixno", "mixno.", "out", "output", "aux", "mon", "monitor", "no", "no.", "nr", "#"]),
        ("who", ["who", "musician", "person", "player", "for", "name", "artist"]),
        ("system", ["type", "system", "kind", "wedge/ear", "wedgeorear", "wedge/in-ear", "format", "monitoring"]),
        ("position", ["position", "place", "where", "location", "pos", "pos."]),
        ("remarks", ["remarks", "remark", "notes", "note", "comment", "comments", "wants"]),
    ];

    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);

    private RiderColumns() { }

    /// <summary>True for a table of mixes, false for one of inputs.</summary>
    public bool IsOfMixes { get; private init; }

    /// <summary>The columns under a row of headers; null for a row that is none.</summary>
    public static RiderColumns? Of(IReadOnlyList<string> cells)
    {
        var (inputs, mixes) = (Find(cells, Inputs, isOfMixes: false), Find(cells, Mixes, isOfMixes: true));
        var isInputs = inputs.places.ContainsKey("what") && (inputs.places.ContainsKey("number") || inputs.places.ContainsKey("equipment"));
        var isMixes = mixes.places.ContainsKey("number") && mixes.places.ContainsKey("who");
        return isInputs && (!isMixes || inputs.places.Count >= mixes.places.Count) ? inputs
            : isMixes ? mixes
            : null;
    }

    /// <summary>What a row says in a column; empty when it says nothing.</summary>
    public string Cell(IReadOnlyList<string> cells, string column) => places.TryGetValue(column, out var place) && place < cells.Count ? cells[place] : "";

    private static RiderColumns Find(IReadOnlyList<string> cells, (string Column, string[] Headers)[] known, bool isOfMixes)
    {
        var columns = new RiderColumns { IsOfMixes = isOfMixes };
        for (var place = 0; place < cells.Count; place++)
        {
            var header = ListHeaders.Plain(cells[place]);
            var entry = Array.Find(known, entry => entry.Headers.Contains(header, StringComparer.Ordinal) && !columns.places.ContainsKey(entry.Column));
            if (entry.Column is not null)
            {
                columns.places.Add(entry.Column, place);
            }
        }

        return columns;
    }
}
