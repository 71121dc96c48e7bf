using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Labels points in use with the names of their feeds and lines, as far as the device shows them.</summary>
internal sealed class LabelFromName : FixProvider
{
    public override string RuleId => "RR7001";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var facts = context.Facts;
        var names = Names(facts);
        var table = LabelTable.Of(facts);
        var end = context.Show.Patch.Labels.Count;
        var edits = new List<ShowEdit>();
        foreach (var point in new LabelUse(facts).Points)
        {
            var device = facts.DeviceOf(point);
            var group = facts.GroupOf(point);
            if ($"{device.Id}/{group.Id}" == finding.IdOf("group") && table.At(point) is null && names.TryGetValue(point.Value, out var name))
            {
                var text = LabelText.Limit(device, group) is { } limit ? LabelText.Cut(name, limit).TrimEnd() : name;
                edits.Add(ShowEdit.Insert(ShowLists.Labels, end++, new PointLabel { At = facts.Address(point, 1), Text = text }));
            }
        }

        return edits.Count == 0
            ? []
            : [Fix.Of($"Label the points of {finding.IdOf("group")} in use with the names of their feeds and lines", FixSafety.Safe, edits.ToValueList())];
    }

    /// <summary>The name for each point that a feed or a line uses; of several the first.</summary>
    private static Dictionary<int, string> Names(RuleContext facts)
    {
        var names = new Dictionary<int, string>();
        foreach (var feed in facts.Feeds)
        {
            Add(names, feed.Source, feed.Width, feed.DisplayName);
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                Add(names, facts.Demand(feed, entry).Existing, feed.Width, feed.DisplayName);
            }
        }

        foreach (var line in facts.Lines)
        {
            Add(names, facts.Demand(line).Existing, line.Width, line.DisplayName);
            foreach (var sink in line.Sinks)
            {
                Add(names, sink, line.Width, line.DisplayName);
            }
        }

        return names;
    }

    private static void Add(Dictionary<int, string> names, PointIndex first, int width, string name)
    {
        for (var position = 0; !first.IsNone && position < width; position++)
        {
            names.TryAdd(first.Value + position, width == 1 ? name : $"{name} {(position == 0 ? "L" : "R")}");
        }
    }
}
