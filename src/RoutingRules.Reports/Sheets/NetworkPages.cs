using System.Globalization;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Lays out the page of the networks.</summary>
internal static class NetworkPages
{
    /// <summary>The share of a link that streams may take; the rule about link reservation says where it comes from.</summary>
    private const double Limit = 0.75;

    public static IEnumerable<Page> Pages(Sheet sheet) =>
        sheet.Latencies.IsEmpty ? sheet.Networks.Select(Network) : sheet.Networks.Select(Network).Append(Latency(sheet));

    private static Page Network(NetworkSheet network)
    {
        var page = new Page
        {
            Title = $"Network {network.Name}",
            Aside = string.Equals(network.Name, network.Id.Value, StringComparison.Ordinal) ? null : network.Id.Value,
        };
        page.Facts.Add(
            string.Join(
                " \u00b7 ",
                new[]
                {
                    $"carries {network.Transport}",
                    network.PacketMilliseconds is { } packet ? string.Create(CultureInfo.InvariantCulture, $"a packet each {packet:0.###} ms") : null,
                    network.Clock is null ? "NO CLOCK NAMED" : $"clock {network.Clock}",
                    network.SampleRate is { } rate ? string.Create(CultureInfo.InvariantCulture, $"{rate} Hz") : null,
                    network.Leader is null ? null : $"leader {network.Leader}",
                    network.Clock is null ? null
                    : network.Backup is null ? "no backup"
                    : $"backup {network.Backup}",
                }.Where(fact => fact is not null)
            )
        );
        page.Facts.Add("Change clock settings last and alone, with all outputs muted.");
        if (!network.Streams.IsEmpty)
        {
            page.Tables.Add(Streams(network));
        }

        if (!network.Links.IsEmpty)
        {
            page.Facts.Add("Bars: what the streams take of each link, headers counted. The stroke stands at 75 %, the most that streams should take.");
            page.Tables.Add(Links(network));
        }

        return page;
    }

    private static PageTable Streams(NetworkSheet network)
    {
        var table = new PageTable
        {
            Title = "Streams",
            RowColumns = 2,
            Columns = [("Stream", 18), ("From", 24, "from "), ("To", 30, "to "), ("In use", 10, "in use "), ("Rate", 18)],
        };
        table.Rows.AddRange(
            network.Streams.Select(stream => new PageRow
            {
                Cells =
                [
                    [.. PageLayout.Strong(stream.Id.Value), .. DevicePages.Notes(stream.Label), .. PageLayout.Change(stream.Change)],
                    DevicePages.Notes(stream.From),
                    stream.To.IsEmpty ? [new PageLine("nobody", PageLineStyle.Mark)] : DevicePages.Notes([.. stream.To]),
                    PageLayout.Cell($"{SheetWords.Number(stream.Used)} of {SheetWords.Number(stream.Channels)}"),
                    PageLayout.Cell(stream.BitsPerSecond is { } rate ? SheetWords.Megabits(rate) : "not known"),
                ],
            })
        );
        if (network.Streams.All(stream => stream.BitsPerSecond is not null))
        {
            table.Rows.Add(new PageRow { Across = $"All streams together: {SheetWords.Megabits(network.Streams.Sum(stream => stream.BitsPerSecond!.Value))}" });
        }

        return table;
    }

    private static PageTable Links(NetworkSheet network)
    {
        var table = new PageTable
        {
            Title = "Links",
            RowColumns = 2,
            Columns = [("Link", 17), ("From", 18, "from "), ("To", 18, "to "), ("Load \u2192", 24, "\u2192 "), ("Load \u2190", 24, "\u2190 ")],
        };
        table.Rows.AddRange(
            network.Links.Select(link => new PageRow
            {
                Cells =
                [
                    [.. PageLayout.Strong(link.Id.Value), .. DevicePages.Notes(link.Cable)],
                    DevicePages.Notes(link.From),
                    DevicePages.Notes(link.To),
                    Load(link, link.Forward),
                    Load(link, link.Backward),
                ],
            })
        );
        return table;
    }

    private static List<PageLine> Load(NetworkLink link, double load)
    {
        var more = link.IsPartial ? " and more" : "";
        if (link.Speed is not > 0)
        {
            return PageLayout.Cell($"{SheetWords.Megabits(load)}{more}", "speed not known");
        }

        var share = load / link.Speed.Value;
        var lines = new List<PageLine>
        {
            new(string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.#} %"), PageLineStyle.Bar) { Share = Math.Min(1, share), Limit = Limit },
            new($"{SheetWords.Megabits(load)}{more}", PageLineStyle.Plain),
        };
        if (share > Limit)
        {
            lines.Add(new PageLine("TOO MUCH", PageLineStyle.Stop));
        }

        return lines;
    }

    private static Page Latency(Sheet sheet)
    {
        var page = new Page { Title = "Latency" };
        page.Facts.Add(
            "From source to destination: what the document states of converters, devices and packets, added up. What it does not state counts "
                + "nothing, and the room counts nothing."
        );
        var table = new PageTable
        {
            Title = "By role",
            RowColumns = 2,
            Columns = [("What", 16), ("Places", 10, "places: "), ("Shortest", 37, "shortest "), ("Longest", 37, "longest ")],
        };
        table.Rows.AddRange(
            sheet.Latencies.Select(row => new PageRow
            {
                Cells =
                [
                    PageLayout.Strong(row.What),
                    PageLayout.Cell(SheetWords.Number(row.Count), row.Unknown > 0 ? $"{SheetWords.Number(row.Unknown)} not stated" : null),
                    At(row.Shortest, row.ShortestAt),
                    At(row.Longest, row.LongestAt),
                ],
            })
        );
        page.Tables.Add(table);
        return page;
    }

    private static List<PageLine> At(double? value, string? at) =>
        value is { } known
            ? [new PageLine(string.Create(CultureInfo.InvariantCulture, $"{known:0.00} ms"), PageLineStyle.Strong), .. DevicePages.Notes(at)]
            : PageLayout.Cell("not stated");
}
