using RoutingRules.Checking.Facts;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports ids given to two things of one kind. Feeds and lines share one set of names, because both are demands.</summary>
public sealed class IdDuplicate : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1102",
            Name = "id-duplicate",
            Title = "One id for two things",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "No two zones, clocks, networks, devices, links, profiles or streams share an id, and no two feeds or lines do.",
            Why = "An address or a name would mean two things; the first one counts and the second one is never reached.",
            Remedy = "Give one of the two another id, and correct the places that mean it.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var rig = context.Rig;
        var seen = new Dictionary<string, int>(Math.Max(context.Feeds.Count + context.Lines.Count, rig.Links.Count), StringComparer.Ordinal);
        Look(context, seen, "zone", "/rig/zones", rig.Zones.Count, i => rig.Zones[i].Id.Value);
        Look(context, seen, "clock", "/rig/clocks", rig.Clocks.Count, i => rig.Clocks[i].Id.Value);
        Look(context, seen, "network", "/rig/networks", rig.Networks.Count, i => rig.Networks[i].Id.Value);
        Look(context, seen, "device", "/rig/devices", rig.Devices.Count, i => rig.Devices[i].Id.Value);
        Look(context, seen, "link", "/rig/links", rig.Links.Count, i => rig.Links[i].Id.Value);
        Look(context, seen, "profile", "/rig/profiles", rig.Profiles.Count, i => rig.Profiles[i].Id.Value);
        Look(context, seen, "stream", "/patch/streams", context.Streams.Count, i => context.Streams[i].Model.Id.Value);
        var feeds = context.Feeds;
        var lines = context.Lines;
        Look(context, seen, "feed or line", "/feeds", feeds.Count + lines.Count, Demand);

        string Demand(int i) => i < feeds.Count ? feeds[i].Model.Id.Value : lines[i - feeds.Count].Model.Id.Value;
    }

    private static void Look(RuleContext context, Dictionary<string, int> seen, string kind, string list, int count, Func<int, string> idAt)
    {
        context.LookedAt(count);
        if (count < 2)
        {
            return;
        }

        seen.Clear();
        seen.EnsureCapacity(count);
        for (var i = 0; i < count; i++)
        {
            if (seen.TryAdd(idAt(i), 1))
            {
                continue;
            }

            seen[idAt(i)]++;
        }

        for (var i = 0; seen.Count < count && i < count; i++)
        {
            var times = seen[idAt(i)];
            if (times < 2)
            {
                continue;
            }

            // The first is where it belongs; the next one is the place to change.
            var second = i + 1;
            while (idAt(second) != idAt(i))
            {
                second++;
            }

            seen[idAt(i)] = 0;
            Report(context, kind, list, idAt(i), i, second, times);
        }
    }

    private static void Report(RuleContext context, string kind, string list, string id, int first, int second, int times)
    {
        if (kind == "feed or line")
        {
            var feeds = context.Feeds.Count;
            list = second < feeds ? list : "/lines";
            kind =
                second < feeds ? "feed"
                : first >= feeds ? "line"
                : kind;
            second -= second < feeds ? 0 : feeds;
        }

        var message =
            kind == "feed or line"
                ? $"A feed and a line are both called '{id}'; reports and placements could not tell them apart. Rename one of them."
                : $"{times} {kind}s are called '{id}'; only the first one can be reached by that name. Rename the other{(times > 2 ? "s" : "")}.";
        context.Report(message, $"{list}/{second}/id", [Entity.Of(kind == "feed or line" ? "demand" : kind, id), .. Identities.Further("same-id", times - 1)]);
    }
}
