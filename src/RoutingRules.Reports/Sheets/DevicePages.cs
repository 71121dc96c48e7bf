using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Lays out the page of a device.</summary>
internal static partial class DevicePages
{
    /// <param name="device">The device.</param>
    /// <param name="isDrawn">True with the drawing of every signal through the device.</param>
    /// <param name="hasNetwork">True with what it sends and takes on networks; false where that is on a page of its own.</param>
    public static Page Page(DeviceSheet device, bool isDrawn, bool hasNetwork)
    {
        var page = new Page { Title = device.Label, Aside = Id(device) };
        page.Facts.Add(
            string.Join(
                " \u00b7 ",
                new[] { device.Zone, device.Type, device.Power.IsEmpty ? null : $"power {string.Join(", ", device.Power)}" }.Where(fact => fact is not null)
            )
        );
        if (device.Notes is not null)
        {
            page.Facts.Add(device.Notes);
        }

        if (device.Change is { } change)
        {
            page.Facts.Add(SheetWords.Change(change));
        }

        page.Tables.AddRange(device.Outputs.Where(IsUsed).Select(Outputs));
        page.Tables.AddRange(device.Inputs.Where(IsUsed).Select(Inputs));
        page.Tables.AddRange(device.Channels.Where(IsUsed).Select(Channels));
        page.Tables.AddRange(device.Buses.Where(IsUsed).Select(Buses));
        if (hasNetwork || page.Tables.Count == 0)
        {
            page.Tables.AddRange(NetworkTables.Of(device, isNamed: false));
        }

        AddFree(page, device, hasNetwork);
        if (isDrawn || page.Tables.Count == 0)
        {
            page.Flows.AddRange(device.Flows);
        }

        if (page.Tables.Count == 0)
        {
            page.Facts.Add("Nothing is known of its connectors.");
        }

        return page;
    }

    /// <summary>The id where the label is another word.</summary>
    public static string? Id(DeviceSheet device) => string.Equals(device.Id.Value, device.Label, StringComparison.Ordinal) ? null : device.Id.Value;

    /// <summary>What stands before the word about phantom power where no heading does.</summary>
    public const string PhantomLead = "48\u00a0V\u00a0";

    private static PageTable Outputs(SheetTable<SheetOutput> table)
    {
        var page = new PageTable
        {
            Title = Title("Outputs", table.Group, table.Connector),
            HasBigFirst = true,
            RowColumns = 2,
            Columns = [("Out", 9), ("Signal", 27), ("Comes from", 32, "from "), ("Goes to", 26, "to "), ("Done", 6)],
        };
        Fill(
            page,
            table.Rows,
            row =>
                [
                    Number(row.At),
                    Named(row.Signal, row.Label, row.Marks, row.Reason),
                    row.Signal is null
                        ? []
                        : [.. PageLayout.Cell(Source(row.Signal)), .. row.Hops.Select(hop => new PageLine(SheetWords.Hop(hop), PageLineStyle.Note))],
                    [.. row.GoesTo.SelectMany(end => End(end)), .. Position(row)],
                    PageLayout.Tick(""),
                ]
        );
        return page;
    }

    /// <summary>Where a cable ends, with the way it takes.</summary>
    public static IEnumerable<PageLine> End(SheetCabled end) => [.. PageLayout.Cell(end.At.ToString()), .. Notes(end.Way)];

    /// <summary>Where what hears an output stands.</summary>
    public static IEnumerable<PageLine> Position(SheetOutput row) =>
        PageLayout.Cell(row.Position is null ? null : $"place: {row.Position}").Select(line => line with { IsAside = true });

    private static PageTable Inputs(SheetTable<SheetInput> table)
    {
        var isCabled = table.Rows.All(row => row.Lines.IsEmpty && !row.Phantom.IsSupplied && row.Phantom.IsOn is null);
        var page = new PageTable
        {
            Title = Title("Inputs", table.Group, table.Connector),
            HasBigFirst = true,
            RowColumns = 2,
            Columns = isCabled
                ? [("In", 9), ("Signal", 27), ("Plugged from", 32), ("Feeds", 26, "to "), ("Done", 6)]
                : [("In", 9), ("Line", 24), ("Equipment, stand, place", 24), ("Phantom", 12, PhantomLead), ("Goes to", 25, "to "), ("Done", 6)],
        };
        var used = table.Rows.Where(row => !row.Lines.IsEmpty).ToArray();
        var common = used.Length > 1 && used.All(row => row.GainOwners == used[0].GainOwners && row.GainFollowers == used[0].GainFollowers) ? used[0] : null;
        if (common is not null && Gain(common) is { Count: > 0 } gain)
        {
            page.Rows.Add(new PageRow { Across = $"For every line here: {string.Join("; ", gain.Select(line => line.Text))}" });
        }

        Fill(
            page,
            table.Rows,
            row =>
                isCabled
                    ? [Number(row.At), Named(row.Signal, row.Label, row.Marks, row.Reason), Plugged(row), Arrivals(row), PageLayout.Tick("")]
                    :
                    [
                        Number(row.At),
                        Line(row),
                        Equipment(row),
                        Phantom(row.Phantom),
                        [.. Arrivals(row), .. common is null || row.Lines.IsEmpty ? Gain(row) : []],
                        PageLayout.Tick(""),
                    ]
        );
        return page;
    }

    private static List<PageLine> Line(SheetInput row) =>
        [
            .. row.Lines.SelectMany(line => PageLayout.Strong(line.Name)),
            .. row.Lines.IsEmpty && row.PluggedFrom is not null ? Named(row.Signal, null, [], null) : [],
            .. row.Lines.Count == 1 ? Label(row.Label, row.Lines[0].Name) : Label(row.Label, null),
            .. Plugged(row),
            .. Marks(row.Marks, row.Reason),
        ];

    private static List<PageLine> Plugged(SheetInput row) =>
        row.PluggedFrom is { } from ? PageLayout.Cell($"{(row.Lines.IsEmpty ? "" : "also ")}from {from.At}", from.Way) : [];

    private static List<PageLine> Equipment(SheetInput row) => [.. row.Lines.SelectMany(line => CheckPages.Equipment(line))];

    private static List<PageLine> Arrivals(SheetInput row) =>
        [
            .. row
                .GoesTo.GroupBy(end => (end.At.Group, end.At.Mark, Label: end.Label == row.Label ? null : end.Label))
                .SelectMany(ends =>
                    Notes(
                        string.Join(", ", ends.SkipLast(1).Select(end => end.At.DeviceLabel).Append(SheetWords.Short(ends.Last().At)))
                            + (ends.Key.Label is null ? "" : $", {ends.Key.Label}")
                    )
                ),
            .. row.Missing.Select(place => new PageLine($"not at {SheetWords.Short(place)}", PageLineStyle.Mark)),
        ];

    private static List<PageLine> Gain(SheetInput row) =>
        Notes(
                row.GainOwners.IsEmpty ? null : $"gain: {string.Join(" AND ", row.GainOwners)}",
                row.GainFollowers.IsEmpty ? null : $"trim: {string.Join(", ", row.GainFollowers)}"
            )
            .ConvertAll(line => line with { IsAside = true });

    public static List<PageLine> Phantom(SheetPhantom phantom)
    {
        var text = SheetWords.Phantom(phantom);
        return text.Length == 0
            ? []
            :
            [
                new PageLine(
                    text,
                    text.Contains(',', StringComparison.Ordinal) ? PageLineStyle.Stop
                        : text == "off" ? PageLineStyle.Plain
                        : PageLineStyle.Strong
                ),
            ];
    }

    private static List<PageLine> Number(SheetPlace place) => [.. PageLayout.Strong(place.Mark), .. PageLayout.Cell(SheetWords.Plug(place))];

    public static List<PageLine> Named(SheetSignal? signal, string? label, ValueList<SheetMark> marks, string? reason) =>
        [.. signal is null ? [] : PageLayout.Strong(Name(signal)), .. Label(label, signal is null ? null : Name(signal)), .. Marks(marks, reason)];

    public static string Name(SheetSignal signal) => signal.Names.IsEmpty ? signal.SourceLabel ?? signal.Source.ToString() : string.Join(" / ", signal.Names);

    /// <summary>The label where it says more than the name above it.</summary>
    private static List<PageLine> Label(string? label, string? name) =>
        PageLayout.Cell(label is null || string.Equals(label, name, StringComparison.OrdinalIgnoreCase) ? null : $"label {label}");

    private static List<PageLine> Marks(ValueList<SheetMark> marks, string? reason)
    {
        var lines = new List<PageLine>();
        foreach (var mark in marks)
        {
            var isStop = mark is SheetMark.Dead or SheetMark.Reserved;
            lines.Add(
                new PageLine(SheetWords.Mark(mark) + (isStop && reason is not null ? $": {reason}" : ""), isStop ? PageLineStyle.Stop : PageLineStyle.Mark)
            );
            reason = isStop ? null : reason;
        }

        return lines;
    }

    public static string Source(SheetSignal signal) => signal.SourceLabel is null ? signal.Source.ToString() : $"{signal.Source}, {signal.SourceLabel}";

    private static string Title(string kind, Id<PortGroup> group, string? connector) =>
        connector is null ? $"{kind}: {group}" : $"{kind}: {group} ({connector})";

    /// <summary>False for a group of which nothing is said; its numbers stand in one line with those of others.</summary>
    private static bool IsUsed<TRow>(SheetTable<TRow> table)
        where TRow : ISheetRow => !table.Rows.All(row => row.IsFree && row.Change is null);

    /// <summary>Rows with something to say one by one; all free ones in one line at the end.</summary>
    private static void Fill<TRow>(PageTable table, ValueList<TRow> rows, Func<TRow, List<PageLine>[]> cells)
        where TRow : ISheetRow
    {
        var free = new List<string>();
        for (var i = 0; i < rows.Count; )
        {
            if (!IsFree(rows[i]))
            {
                var row = cells(rows[i]);
                row[1] = [.. row[1], .. PageLayout.Change(rows[i].Change)];
                table.Rows.Add(new PageRow { Cells = row });
                i++;
                continue;
            }

            var end = i;
            while (end < rows.Count && IsFree(rows[end]))
            {
                end++;
            }

            free.Add(end - i > 1 ? $"{rows[i].At.Mark} to {rows[end - 1].At.Mark}" : rows[i].At.Mark);
            i = end;
        }

        if (free.Count > 0)
        {
            table.Rows.Add(new PageRow { Across = $"Free: {string.Join(", ", free)}" });
        }

        static bool IsFree(TRow row) => row.IsFree && row.Change is null;
    }
}
