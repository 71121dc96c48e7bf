using System.Globalization;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <content>Streams and links.</content>
public static partial class SheetLists
{
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
}
