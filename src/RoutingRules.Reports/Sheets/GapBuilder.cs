using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Says what the document asks for and does not get.</summary>
internal sealed partial class GapBuilder(SheetFacts facts)
{
    private readonly HashSet<PointIndex> taken =
    [
        .. facts.Show.Demands.Where(demand => !demand.Existing.IsNone).SelectMany(demand => Enumerable.Range(0, demand.Width).Select(i => demand.Existing + i)),
    ];

    private readonly List<SheetGap> gaps = [];

    public ValueList<SheetGap> Build()
    {
        foreach (var feed in facts.Show.Feeds)
        {
            AddFeed(feed);
        }

        foreach (var line in facts.Show.Lines)
        {
            AddLine(line);
        }

        AddPatch();
        AddRig();
        return gaps.ToValueList();
    }

    private void Add(string subject, string text) => gaps.Add(new SheetGap { Subject = subject, Text = text });

    private void AddFeed(FeedNode feed)
    {
        var source = facts.Address(feed.Model.Source);
        if (feed.SourceState != ConnectionState.Connected)
        {
            Add(feed.DisplayName, $"Its bus {source} is not in the rig: correct the address of the bus.");
        }

        if (feed.Model.To.IsEmpty)
        {
            Add(feed.DisplayName, "It names no destination: say where it shall go.");
        }

        for (var entry = 0; entry < feed.Model.To.Count && !feed.Source.IsNone; entry++)
        {
            var demand = facts.Show.Demands[feed.FirstDemand + entry];
            if (demand.Existing.IsNone)
            {
                Add(demand.DisplayName, Explain(feed, demand, source));
            }
            else
            {
                AddMarks(demand.DisplayName, "arrives at", demand.Existing, demand.Width);
            }
        }
    }

    private void AddMarks(string subject, string verb, PointIndex first, int width)
    {
        for (var position = 0; position < width; position++)
        {
            foreach (var mark in facts.Marks(first + position))
            {
                var reason = mark.Reason is null ? "" : $" ({mark.Reason})";
                Add(subject, $"It {verb} {facts.Place(first + position)}, which is {(mark.IsDead ? "DEAD" : "RESERVED")}{reason}. Move it.");
            }
        }
    }

    private string Explain(FeedNode feed, DemandNode demand, string source)
    {
        var wanted = facts.Wanted(feed.Model.To[demand.Entry]);
        if (demand.Allowed.Count == 0)
        {
            return $"{source} shall reach {wanted}, but no connector there can take it: check the destination and its cables.";
        }

        var arrived = demand.IsPinned && demand.Width == 2 ? PairState(demand.Allowed[0], feed.Source) : "does not arrive";
        return $"{source} {arrived} at {wanted}. {(HasRoom(demand) ? "Patch it there." : "Nothing is free there: make room first, or name another place.")}";
    }

    /// <summary>True when a place the demand may take is fixed to it, or taken by nobody.</summary>
    private bool HasRoom(DemandNode demand) =>
        demand.IsPinned || demand.Allowed.Any(run => Enumerable.Range(0, demand.Width).All(i => !taken.Contains(run + i) && facts.Marks(run + i).Count == 0));

    private string PairState(PointIndex at, PointIndex source) =>
        (facts.IsFedBy(at, source), facts.IsFedBy(at + 1, source + 1), facts.IsFedBy(at, source + 1), facts.IsFedBy(at + 1, source)) switch
        {
            (true, false, _, _) => "arrives left only",
            (false, true, _, _) => "arrives right only",
            (_, _, true, true) => "arrives with left and right swapped",
            _ => "does not arrive",
        };

    private void AddLine(LineNode line)
    {
        if (line.Model.To.IsEmpty)
        {
            Add(line.DisplayName, "It names no channel: say where it shall go.");
        }

        var entries = facts.Entries(line);
        var from = facts.Wanted(line.Model.From);
        if (entries.Count == 0)
        {
            var place = facts.Show.Demands[line.Demand].IsPinned
                ? $"{from} is no input or source that is {(line.Width == 1 ? "one" : "two")} wide: correct where it enters."
                : $"It has no input yet; wanted at {from}.";
            Add(line.DisplayName, $"{place} Its channels: {string.Join(", ", line.Model.To.Select(facts.Address))}.");
            return;
        }

        foreach (var entry in entries)
        {
            AddMarks(line.DisplayName, "enters at", entry, line.Width);
        }

        for (var sink = 0; sink < line.Sinks.Count; sink++)
        {
            var to = facts.Address(line.Model.To[sink]);
            if (line.Sinks[sink].IsNone)
            {
                Add(line.DisplayName, $"Its channel {to} is not in the rig or not as wide as the line: correct the address.");
            }
            else if (!Enumerable.Range(0, line.Width).All(position => facts.Reaches(line, sink, position)))
            {
                var entry = facts.Place(entries[0]) + (line.Width == 1 ? "" : $"-{facts.Place(entries[0] + 1).Mark}");
                Add(line.DisplayName, $"{entry} {State(line, line.Sinks[sink], entries)} at {to}. Route it there.");
            }
        }
    }

    private string State(LineNode line, PointIndex sink, IReadOnlyList<PointIndex> entries)
    {
        foreach (var entry in entries)
        {
            if (line.Width == 2 && PairState(sink, entry) is { } state && state != "does not arrive")
            {
                return state;
            }
        }

        return "does not arrive";
    }
}
