using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>The feeds that do not arrive everywhere, with causes, and runs of them that one cause explains.</summary>
internal static class FeedFaults
{
    private sealed record Found(List<FeedFault> Faults);

    /// <summary>
    /// The feeds with an entry of which nothing arrives, in document order; entries that other rules explain are left out. Not to be changed.
    /// </summary>
    public static List<FeedFault> Collect(RuleContext context) => context.Shared(static asking => new Found(Find(asking))).Faults;

    /// <summary>How many feeds have so many entries or more, served or not.</summary>
    public static int Judged(RuleContext context, int entries)
    {
        var judged = 0;
        foreach (var feed in context.Feeds)
        {
            judged += feed.Model.To.Count >= entries ? 1 : 0;
        }

        return judged;
    }

    private static List<FeedFault> Find(RuleContext context)
    {
        var faults = new List<FeedFault>();
        CauseFinder? finder = null;
        var told = ExplainedByOtherRule.Of(context);
        foreach (var feed in context.Feeds)
        {
            if (IsServed(context, feed))
            {
                continue;
            }

            finder ??= CauseFinder.Of(context);
            var missing = new List<FeedEntry>();
            var arriving = new List<FeedEntry>();
            var causes = new List<MissingCause>();
            foreach (var entry in FeedDelivery.Entries(context, feed, told))
            {
                if (entry.State is not (EntryState.Missing or EntryState.Unknown))
                {
                    arriving.Add(entry);
                }
                else if (entry.State == EntryState.Missing && finder.Find(feed, entry) is { } cause)
                {
                    missing.Add(entry);
                    if (!causes.Contains(cause))
                    {
                        causes.Add(cause);
                    }
                }
            }

            if (missing.Count > 0)
            {
                faults.Add(
                    new FeedFault
                    {
                        Feed = feed,
                        Missing = missing,
                        Arriving = arriving,
                        Causes = causes,
                    }
                );
            }
        }

        return faults;
    }

    /// <summary>Runs of faults that one cause explains, each with its causes joined; the order does not depend on the order of the feeds.</summary>
    public static List<(List<FeedFault> Faults, List<MissingCause> Causes)> Runs(RuleContext context, List<FeedFault> faults) =>
        FaultRuns.Of(faults, fault => fault.Causes, Compare, (_, causes, fault) => Join(context, causes, fault.Causes));

    /// <summary>The feeds of a run and the entries they miss as entities, in the order of their causes.</summary>
    public static List<Entity> Entities(List<FeedFault> run) => [.. run.SelectMany(fault => fault.Entities())];

    /// <summary>Causes in words, joined.</summary>
    public static string Describe(RuleContext context, List<MissingCause> causes) => string.Join("; ", causes.Select(cause => cause.Describe(context)));

    private static bool IsServed(RuleContext context, FeedNode feed)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            if (context.Demand(feed, entry).Existing.IsNone)
            {
                return false;
            }
        }

        return true;
    }

    private static List<MissingCause>? Join(RuleContext context, List<MissingCause> earlier, List<MissingCause> later)
    {
        if (earlier.Count != later.Count)
        {
            return null;
        }

        var joined = new List<MissingCause>(earlier.Count);
        for (var i = 0; i < earlier.Count; i++)
        {
            if (MissingCause.Join(context, earlier[i], later[i]) is not { } cause)
            {
                return null;
            }

            joined.Add(cause);
        }

        return joined;
    }

    private static int Compare(FeedFault x, FeedFault y)
    {
        var order = FaultRuns.Compare(x.Causes, y.Causes);
        order = order != 0 ? order : x.Feed.Model.Id.CompareTo(y.Feed.Model.Id);
        return order != 0 ? order : x.Feed.Index.CompareTo(y.Feed.Index);
    }
}
