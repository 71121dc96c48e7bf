using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Counts what the show says has to be there. Length classes and spares are common practice, no source.</summary>
internal sealed class KitBuilder(SheetFacts facts, SheetSelection selection)
{
    private const int SpareFor = 10;

    /// <summary>Lengths in metres that cables are kept in; a cable is taken from the next that reaches.</summary>
    private static readonly int[] Lengths = [1, 2, 3, 5, 10, 15, 20, 30, 50, 75, 100, 150, 200, 300, 500];

    /// <summary>What people write for no stand.</summary>
    private static readonly string[] Nothing = ["none", "no"];

    /// <summary>What a microphone at line level is called, because its receiver is.</summary>
    private static readonly string[] Microphones = ["microphone", "hand-held", "handheld", "headset"];

    private readonly List<SheetKitItem> items = [];

    public ValueList<SheetKitItem> Build()
    {
        foreach (var line in facts.Show.Lines.Where(selection.Concerns))
        {
            AddLine(line);
        }

        foreach (var feed in facts.Show.Feeds.Where(selection.Concerns))
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                AddOutput(facts.Show.Demands[feed.FirstDemand + entry].Existing, feed.Width);
            }
        }

        AddCables();
        foreach (var link in facts.Show.Links.Where(link => selection.IsAll || selection.Has(link.From) || selection.Has(link.To)))
        {
            var parts = new[] { "network cable", link.Model.Medium?.Value, Length(link.Model.LengthMetres) };
            Add(SheetKitKind.Cable, string.Join(", ", parts.Where(part => part is not null)), null, 1, link.Model.Id.Value);
        }

        foreach (var pack in KitItems.Of(facts.Show.Feeds.Where(selection.Concerns).Select(feed => feed.Model)))
        {
            Add(SheetKitKind.Pack, "pack", null, pack.Count, pack.Name);
        }

        return items.OrderBy(item => item.Kind).ToValueList();
    }

    private void AddLine(LineNode line)
    {
        foreach (var item in KitItems.Of(line.Model).Where(item => !Nothing.Contains(item.Name, StringComparer.OrdinalIgnoreCase)))
        {
            var kind =
                item.Kind == KitKind.Stand ? SheetKitKind.Stand
                : KitWords.IsDirectBox(item.Name) ? SheetKitKind.DirectBox
                : line.Model.Kind == LineKind.Microphone || IsMicrophone(item.Name) ? SheetKitKind.Microphone
                : SheetKitKind.Other;
            Add(kind, item.Name, item.SuppliedBy, item.Count, line.DisplayName);
        }

        if (line.Model.Kind == LineKind.Microphone && string.IsNullOrWhiteSpace(line.Model.Equipment) && line.Source.IsNone)
        {
            Add(SheetKitKind.Microphone, "microphone or direct box, which is not stated", null, line.Width, line.DisplayName, hasSpare: false);
        }

        var entries = facts.Entries(line);
        var plugs = entries.Count == 0 && line.Source.IsNone ? line.Width : 0;
        plugs += entries
            .SelectMany(entry => Enumerable.Range(0, line.Width).Select(position => entry + position))
            .Count(at => facts.Graph.GroupOf(at).Kind == PortKind.Input && facts.Graph.Upstream(at).IsNone);
        Add(SheetKitKind.Cable, "signal cable to an input, length not stated", null, plugs, null);
    }

    /// <summary>What is plugged into an output that has no cable in the rig.</summary>
    private void AddOutput(PointIndex served, int width)
    {
        for (var position = 0; !served.IsNone && position < width; position++)
        {
            var group = facts.Graph.GroupOf(served + position);
            if (
                group.Kind == PortKind.Output
                && !facts.Graph.Fed(served + position).ToArray().Any(next => facts.Graph.Via(new PointIndex(next)) == HopKind.Cable)
            )
            {
                var what = group.Model.Level == SignalLevel.Speaker ? "loudspeaker cable" : "signal cable";
                Add(SheetKitKind.Cable, $"{what} from an output, length not stated", null, 1, null);
            }
        }
    }

    private void AddCables()
    {
        var cables = facts.Show.Cables.Where(cable => selection.IsAll || selection.Has(cable.From) || selection.Has(cable.To)).Select(cable => cable.Model);
        var looms = new List<(string Loom, Id<Device> From, int Ways)>();
        foreach (var cable in cables)
        {
            if (cable.Way is null)
            {
                Add(SheetKitKind.Cable, "signal cable between devices, length not stated", null, cable.From.Width, null);
                continue;
            }

            var loom = LossUnitList.LoomOf(cable.Way);
            var at = looms.FindIndex(other => other.Loom == loom && other.From == cable.From.Device);
            if (at < 0)
            {
                looms.Add((loom, cable.From.Device, cable.From.Width));
            }
            else
            {
                looms[at] = looms[at] with { Ways = looms[at].Ways + cable.From.Width };
            }
        }

        foreach (var (loom, from, ways) in looms)
        {
            var name = $"{loom} from {facts.Graph.Device(from)?.DisplayName ?? from.Value}, {PlainText.Count(ways, "way", "ways")} used, length not stated";
            Add(SheetKitKind.Cable, name, null, 1, null, hasSpare: false);
        }
    }

    private static bool IsMicrophone(string name) => Array.Exists(Microphones, word => name.Contains(word, StringComparison.OrdinalIgnoreCase));

    private static string Length(double? metres) =>
        metres is not { } known ? "length not stated"
        : Array.Find(Lengths, length => known <= length) is var length and > 0 ? string.Create(CultureInfo.InvariantCulture, $"up to {length} m")
        : string.Create(CultureInfo.InvariantCulture, $"over {Lengths[^1]} m");

    private void Add(SheetKitKind kind, string name, string? from, int count, string? use, bool hasSpare = true)
    {
        if (count == 0)
        {
            return;
        }

        var at = items.FindIndex(item => item.Kind == kind && item.Name == name && item.SuppliedBy == from);
        if (at < 0)
        {
            at = items.Count;
            items.Add(
                new SheetKitItem
                {
                    Kind = kind,
                    Name = name,
                    SuppliedBy = from,
                    Count = 0,
                }
            );
        }

        var total = items[at].Count + count;
        items[at] = items[at] with
        {
            Count = total,
            Spare = hasSpare && from is null ? (total + SpareFor - 1) / SpareFor : 0,
            For = use is null || items[at].For.Contains(use) ? items[at].For : [.. items[at].For, use],
        };
    }
}
