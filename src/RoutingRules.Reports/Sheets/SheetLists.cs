using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>The lists of a sheet, for programs and spreadsheets. Thread safe.</summary>
public static class SheetLists
{
    private const string Between = "; ";

    /// <summary>All lists in the order of their kinds; empty ones keep their columns.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static ValueList<SheetList> All(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Enum.GetValues<SheetListKind>().Select(kind => Of(sheet, kind)).ToValueList();
    }

    /// <summary>One list.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static SheetList Of(Sheet sheet, SheetListKind kind)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return kind switch
        {
            SheetListKind.Inputs => Inputs(sheet),
            SheetListKind.Outputs => Make(kind, "Output list", OutputColumns, sheet.Devices.SelectMany(Outputs)),
            SheetListKind.Walk => Walk(sheet),
            SheetListKind.Mixes => Make(kind, "Output check", MixColumns, sheet.OutputChecks.Select(Mix)),
            SheetListKind.Packs => Make(kind, "Packs", PackColumns, sheet.Packs.Select(Pack)),
            SheetListKind.Streams => Make(
                kind,
                "Streams",
                StreamColumns,
                sheet.Networks.SelectMany(network => network.Streams.Select(stream => Stream(network, stream)))
            ),
            SheetListKind.Links => Make(kind, "Links", LinkColumns, sheet.Networks.SelectMany(network => network.Links.Select(link => Link(network, link)))),
            SheetListKind.Gaps => Make(kind, "Not patched yet", ["What", "What is missing"], sheet.Gaps.Select(gap => new[] { gap.Subject, gap.Text })),
            _ => Make(kind, "Changes", ["What", "Kind", "Was", "Is"], sheet.Differences.Select(row => new[] { row.Subject, Word(row.Kind), row.Was, row.Now })),
        };
    }

    private static readonly string[] LineColumns =
    [
        "Line",
        "Id",
        "Enters at",
        "Way",
        "Equipment",
        "Stand",
        "Place",
        "From",
        "Phantom",
        "Spare",
        "Notes",
        "Change",
    ];

    private static readonly string[] OutputColumns =
    [
        "Device",
        "Device id",
        "Zone",
        "Group",
        "Number",
        "Panel",
        "Label",
        "Signal",
        "Roles",
        "Bus",
        "Bus label",
        "By",
        "Goes to",
        "Way",
        "Marks",
        "Reason",
        "Change",
        "Place",
    ];

    private static readonly string[] MixColumns =
    [
        "Say",
        "Mix",
        "Id",
        "Role",
        "Bus",
        "Bus label",
        "Arrives at",
        "Missing at",
        "Person",
        "Pack",
        "Place",
        "How",
        "Notes",
        "Change",
    ];

    private static readonly string[] PackColumns = ["Pack", "Person", "Mix", "Id", "Role", "Bus", "Output", "Place", "Limiter", "Change"];

    private static readonly string[] StreamColumns = ["Network", "Stream", "Label", "From", "To", "Channels", "In use", "Mbit/s", "Change"];

    private static readonly string[] LinkColumns =
    [
        "Network",
        "Link",
        "From",
        "To",
        "Cable",
        "Mbit/s",
        "Load there Mbit/s",
        "Load back Mbit/s",
        "Load there %",
        "Load back %",
    ];

    private static SheetList Make(SheetListKind kind, string title, string[] columns, IEnumerable<IEnumerable<string?>> rows) =>
        new()
        {
            Kind = kind,
            Title = title,
            Columns = columns.Select(VisibleText.Of).ToValueList(),
            Rows = rows.Select(row => row.Select(text => VisibleText.Of(text ?? "")).ToValueList()).ToValueList(),
        };

    /// <summary>A column for each console and recorder, named by it; one that is named like another column gets a number.</summary>
    private static string[] ConsoleColumns(string[] consoles, string[] taken)
    {
        var names = new List<string>(taken);
        foreach (var console in consoles)
        {
            var name = console;
            for (var i = 2; names.Contains(name, StringComparer.Ordinal); i++)
            {
                name = $"{console} {SheetWords.Number(i)}";
            }

            names.Add(name);
        }

        return [.. names.Skip(taken.Length)];
    }

    private static SheetList Inputs(Sheet sheet)
    {
        var consoles = CheckPages.Consoles(sheet.LineChecks);
        return Make(
            SheetListKind.Inputs,
            "Input list",
            [.. ConsoleColumns(consoles, LineColumns), .. LineColumns],
            sheet.LineChecks.Select(row => Channels(row, consoles).Concat(Line(row)))
        );
    }

    private static SheetList Walk(Sheet sheet)
    {
        var consoles = CheckPages.Consoles(sheet.LineChecks);
        string[] columns = ["Zone", "Device", "Spares there", .. LineColumns];
        return Make(
            SheetListKind.Walk,
            "Walk",
            [.. columns, .. ConsoleColumns(consoles, columns)],
            sheet.Walk.SelectMany(stop =>
                stop.Lines.Select(row =>
                    new[] { stop.Zone, stop.DeviceLabel, string.Join(Between, stop.Spares) }.Concat(Line(row)).Concat(Channels(row, consoles))
                )
            )
        );
    }

    private static IEnumerable<string?> Channels(LineCheck row, string[] consoles) =>
        consoles.Select(console =>
            string.Join(
                Between,
                row.Ticks.Where(tick => string.Equals(tick.DeviceLabel, console, StringComparison.Ordinal))
                    .Select(tick => $"{(tick.Arrives ? "" : "not at ")}{(tick.At.Group.Value == "channel" ? tick.At.Mark : $"{tick.At.Group} {tick.At.Mark}")}")
            )
        );

    private static IEnumerable<string?> Line(LineCheck row) =>
        [
            row.Line.Name,
            row.Line.Id.Value,
            string.Join(Between, row.Enters),
            string.Join(Between, row.Ways),
            row.Line.Equipment,
            row.Line.Stand,
            row.Line.Position,
            row.Line.SuppliedBy,
            row.Phantom is null ? "" : SheetWords.Phantom(row.Phantom),
            row.Spare?.ToString(),
            row.Line.Notes,
            Change(row.Change),
        ];

    private static IEnumerable<IEnumerable<string?>> Outputs(DeviceSheet device) =>
        device
            .Outputs.SelectMany(group => group.Rows)
            .Select(row =>
                new[]
                {
                    device.Label,
                    device.Id.Value,
                    device.Zone,
                    row.At.Group.Value,
                    SheetWords.Number(row.At.Number),
                    row.At.Panel,
                    row.Label,
                    row.Signal is null ? "" : DevicePages.Name(row.Signal),
                    row.Signal is null ? "" : string.Join(Between, row.Signal.Roles.Select(role => role.Value)),
                    row.Signal?.Source.ToString(),
                    row.Signal?.SourceLabel,
                    string.Join(Between, row.Hops.Select(SheetWords.Hop)),
                    string.Join(Between, row.GoesTo.Select(end => end.At.ToString())),
                    string.Join(Between, row.GoesTo.Where(end => end.Way is not null).Select(end => end.Way)),
                    string.Join(Between, row.Marks.Select(SheetWords.Mark)),
                    row.Reason,
                    Change(row.Change),
                    row.Position,
                }
            );

    private static IEnumerable<string?> Mix(OutputCheck row) =>
        [
            row.Announce,
            row.Name,
            row.Id.Value,
            row.Role.Value,
            row.Source,
            row.SourceLabel,
            string.Join(Between, row.Places.SelectMany(place => place.Arrives).Select(DevicePages.Path)),
            string.Join(Between, row.Places.Where(place => place.Arrives.IsEmpty).Select(place => place.Wanted)),
            row.Person,
            row.Pack,
            row.Position,
            row.How,
            row.Notes,
            Change(row.Change),
        ];

    private static IEnumerable<string?> Pack(SheetPack row) =>
        [
            row.Pack,
            row.Person,
            row.Mix,
            row.Id.Value,
            row.Role.Value,
            row.Source,
            string.Join(Between, row.Outputs.Select(DevicePages.Path)),
            row.Position,
            row.Limiter switch
            {
                true => "declared",
                false => "none",
                null => "",
            },
            Change(row.Change),
        ];

    private static IEnumerable<string?> Stream(NetworkSheet network, NetworkStream stream) =>
        [
            network.Name,
            stream.Id.Value,
            stream.Label,
            stream.From,
            string.Join(Between, stream.To),
            SheetWords.Number(stream.Channels),
            SheetWords.Number(stream.Used),
            Figure(stream.BitsPerSecond / 1_000_000),
            Change(stream.Change),
        ];

    private static IEnumerable<string?> Link(NetworkSheet network, NetworkLink link) =>
        [
            network.Name,
            link.Id.Value,
            link.From,
            link.To,
            link.Cable,
            Figure(link.Speed / 1_000_000),
            Figure(link.Forward / 1_000_000),
            Figure(link.Backward / 1_000_000),
            Figure(100 * link.Forward / link.Speed),
            Figure(100 * link.Backward / link.Speed),
        ];

    private static string Figure(double? value) => value is { } known ? known.ToString("0.###", CultureInfo.InvariantCulture) : "";

    private static string Change(SheetChange? change) => change is null ? "" : SheetWords.Change(change);

    private static string Word(SheetChangeKind kind) =>
        kind == SheetChangeKind.New ? "new"
        : kind == SheetChangeKind.Changed ? "changed"
        : "gone";
}
