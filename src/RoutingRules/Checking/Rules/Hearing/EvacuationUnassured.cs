using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports evacuation feeds that depend on the console, or of which nothing says what puts them over the show.</summary>
/// <remarks>
/// A feed depends on a console when it starts at one or passes one. That is excused where another evacuation feed reaches loudspeakers without any. One
/// finding for each feed; the entity is the feed.
/// </remarks>
public sealed class EvacuationUnassured : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9008",
            Name = "evacuation-unassured",
            Title = "Evacuation depends on the console",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Checks = "Evacuation has a path that does not go through a console, and each of its feeds states what puts it over everything else.",
            Why = "When the console is dead, muted or in the hands of somebody who does not know, people must still hear that they have to leave.",
            Remedy =
                "Bring it in behind the console, and write into override what silences the show. Emergency sound is governed by local code: ask "
                + "those who answer for it and licensed people; this check does not replace them.",
            Source = "common practice, no source; local code decides",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        List<(FeedNode Feed, DeviceNode? Console)>? feeds = null;
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Role == FeedRole.Evacuation && !feed.Source.IsNone)
            {
                context.LookedAt();
                (feeds ??= []).Add((feed, Console(context, feed)));
            }
        }

        var isAssured = feeds?.Exists(static found => found.Console is null && found.Feed.Model.To.Count > 0) == true;
        foreach (var (feed, console) in feeds ?? [])
        {
            var why = new List<string>();
            if (console is not null && !isAssured)
            {
                why.Add($"goes only through the console '{console.Id}'");
            }

            if (string.IsNullOrWhiteSpace(feed.Model.Override))
            {
                why.Add($"{(why.Count > 0 ? "" : "goes out, but ")}nothing says what puts it over everything else");
            }

            if (why.Count > 0)
            {
                context.Report($"Evacuation feed '{feed.DisplayName}' {Wording.List(why)}.", $"/feeds/{feed.Index}", Entity.Of("feed", feed.Model.Id));
            }
        }
    }

    /// <summary>The console that a feed starts at or passes; null when it does neither.</summary>
    private static DeviceNode? Console(RuleContext context, FeedNode feed)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            foreach (var point in context.Upward(context.Demand(feed, entry).Existing))
            {
                if (context.DeviceOf(point) is { Profile.Kind: var kind } device && kind == DeviceKind.Console)
                {
                    return device;
                }
            }
        }

        return context.DeviceOf(feed.Source) is { Profile.Kind: var own } source && own == DeviceKind.Console ? source : null;
    }
}
