using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>What each kind of row says, item by item: what is compared of it with an older revision.</summary>
internal static class SheetRowItems
{
    public static string Place(ValueList<SheetPlace> places, string name) => places.IsEmpty ? name : $"{name} ({places[0]})";

    private static string Name(SheetSignal? signal) => signal is null ? "" : DevicePages.Name(signal);

    private static string Marks(ValueList<SheetMark> marks) => string.Join(", ", marks.Select(SheetWords.Mark));

    public static (string Item, string Text)[] Output(SheetOutput row) =>
        [
            ("", Name(row.Signal)),
            ("bus", row.Signal?.Source.ToString() ?? ""),
            ("by", string.Join(", ", row.Hops.Select(SheetWords.Hop))),
            ("to", string.Join(", ", row.GoesTo.Select(end => end.At.ToString()))),
            ("place", row.Position ?? ""),
            ("label", row.Label ?? ""),
            ("marked", Marks(row.Marks)),
        ];

    public static (string Item, string Text)[] Input(SheetInput row) =>
        [
            ("", string.Join(" / ", row.Lines.Select(line => line.Name))),
            ("plugged from", row.PluggedFrom?.At.ToString() ?? ""),
            ("phantom", SheetWords.Phantom(row.Phantom)),
            ("to", string.Join(", ", row.GoesTo.Select(end => SheetWords.Short(end.At)))),
            ("with", string.Join(" / ", row.Lines.Select(line => string.Join(", ", CheckPages.Equipment(line).Select(part => part.Text))))),
            ("gain", string.Join(", ", row.GainOwners)),
            ("label", row.Label ?? ""),
            ("marked", Marks(row.Marks)),
        ];

    public static (string Item, string Text)[] Channel(SheetChannel row) =>
        [
            ("", Name(row.Signal)),
            ("from", string.Join(", ", row.Enters)),
            ("phantom", string.Join(", ", row.Phantom.Select(SheetWords.Phantom))),
            ("label", row.Label ?? ""),
            ("marked", Marks(row.Marks)),
        ];

    public static (string Item, string Text)[] Bus(SheetBus row) =>
        [
            ("", string.Join(" / ", row.Names)),
            ("at", string.Join(", ", row.Arrives.Select(DevicePages.Path))),
            ("label", row.Label ?? ""),
            ("marked", Marks(row.Marks)),
        ];

    public static (string Item, string Text)[] Jack(SheetJack row) =>
        [("to", row.FarEnd?.ToString() ?? ""), ("cable", string.Join(", ", new[] { row.Link, row.Cable }.Where(text => text is not null)))];

    public static (string Item, string Text)[] Line(LineCheck row) =>
        [
            ("", row.Line.Name),
            ("at", string.Join(", ", row.Enters)),
            ("way", string.Join(", ", row.Ways)),
            ("with", string.Join(", ", CheckPages.Equipment(row.Line).Select(part => part.Text))),
            ("phantom", row.Phantom is null ? "" : SheetWords.Phantom(row.Phantom)),
            ("to", string.Join(", ", row.Ticks.Select(tick => SheetWords.Short(tick.At)))),
        ];

    public static (string Item, string Text)[] Mix(OutputCheck row) =>
        [
            ("", row.Name),
            ("from", row.Source),
            (
                "at",
                string.Join(", ", row.Places.SelectMany(place => place.Arrives.IsEmpty ? [$"not at {place.Wanted}"] : place.Arrives.Select(DevicePages.Path)))
            ),
            ("for", string.Join(", ", new[] { row.Person, row.Pack, row.Position }.Where(text => text is not null))),
        ];

    public static (string Item, string Text)[] Pack(SheetPack row) =>
        [
            ("", row.Mix),
            ("for", row.Person ?? ""),
            ("pack", row.Pack ?? ""),
            ("from", row.Source),
            ("at", string.Join(", ", row.Outputs.Select(DevicePages.Path))),
        ];
}
