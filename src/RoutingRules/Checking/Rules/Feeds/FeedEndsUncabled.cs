using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports feeds whose output has no cable although its neighbours of the same kind have one.</summary>
/// <remarks>One finding for each run of neighbouring outputs.</remarks>
public sealed class FeedEndsUncabled : Rule<ResolvedShow>
{
    /// <summary>From so many cabled neighbours on, cables of the group are evidently written down.</summary>
    private const int Neighbours = 2;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3016",
            Name = "feed-ends-uncabled",
            Title = "Feed ends at an output without a cable",
            Family = RuleFamily.Feeds,
            Severity = Severity.Note,
            Checks = "A feed's output is cabled when at least two outputs of the same group that serve the same role or set are.",
            Why = "Where everybody else's cable is on the list, the one that is missing was forgotten: on paper or on stage.",
            Remedy = "Plug the cable and write it down, or write down where the feed ends.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Cables.Count == 0)
        {
            return;
        }

        var intentions = Intentions.Of(context);
        var cables = 0;
        var placed = new List<(PointIndex Output, FeedNode Feed, bool IsCabled)>();
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var existing = context.Demand(feed, entry).Existing;
                for (var position = 0; !existing.IsNone && context.GroupOf(existing).Kind == PortKind.Output && position < feed.Width; position++)
                {
                    var isCabled = intentions.IsCabled(existing + position);
                    placed.Add((existing + position, feed, isCabled));
                    cables += isCabled ? 1 : 0;
                }
            }
        }

        context.LookedAt(placed.Count);
        if (cables < Neighbours || cables == placed.Count)
        {
            return;
        }

        var cabled = new Dictionary<(int Device, int Group, bool IsSet, string Name), int>();
        foreach (var (output, feed, isCabled) in placed)
        {
            if (isCabled)
            {
                Count(cabled, OfRole(context, output, feed));
                Count(cabled, OfSet(context, output, feed));
            }
        }

        var found = new SinkRuns();
        var names = new Dictionary<int, FeedNode>();
        foreach (var (output, feed, isCabled) in placed)
        {
            if (!isCabled && (Counted(cabled, OfRole(context, output, feed)) >= Neighbours || Counted(cabled, OfSet(context, output, feed)) >= Neighbours))
            {
                names[output.Value] = feed;
                found.Add(output, PointIndex.None, 0, feed.Index);
            }
        }

        foreach (var run in found.IsEmpty ? [] : found.Merge(context))
        {
            Report(context, run, names);
        }
    }

    private static (int Device, int Group, bool IsSet, string Name) OfRole(RuleContext context, PointIndex output, FeedNode feed) =>
        (context.DeviceOf(output).Index, context.GroupOf(output).Index, false, feed.Model.Role.Value);

    private static (int Device, int Group, bool IsSet, string Name)? OfSet(RuleContext context, PointIndex output, FeedNode feed) =>
        feed.Model.Set is { } set ? (context.DeviceOf(output).Index, context.GroupOf(output).Index, true, set) : null;

    private static void Count(Dictionary<(int Device, int Group, bool IsSet, string Name), int> cabled, (int Device, int Group, bool IsSet, string Name)? key)
    {
        if (key is { } counted)
        {
            cabled[counted] = cabled.GetValueOrDefault(counted) + 1;
        }
    }

    private static int Counted(
        Dictionary<(int Device, int Group, bool IsSet, string Name), int> cabled,
        (int Device, int Group, bool IsSet, string Name)? key
    ) => key is { } counted ? cabled.GetValueOrDefault(counted) : 0;

    private static void Report(RuleContext context, SinkRun run, Dictionary<int, FeedNode> names)
    {
        var outputs = context.Address(run.Sink, run.Width);
        var feeds = new List<string>();
        for (var position = 0; position < run.Width; position++)
        {
            var name = $"'{names[run.Sink.Value + position].DisplayName}'";
            if (!feeds.Contains(name))
            {
                feeds.Add(name);
            }
        }

        context.Report(
            $"No cable leads on from {outputs} ({Wording.List(feeds)}), although outputs beside {Wording.Verb(outputs, "it", "them")} with the "
                + "same task are cabled.",
            $"/feeds/{run.Order}",
            Entity.Of("output", outputs)
        );
    }
}
