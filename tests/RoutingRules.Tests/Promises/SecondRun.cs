using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Tests.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Promises;

/// <summary>Whether what was assigned, assigned again, is itself.</summary>
/// <remarks>
/// What a document does not tell apart is left out, and what a second run may use that the first may not. Two feeds of one bus: an output may be either's
/// place. Unlisted signals kept: the second run tolerates what the first one placed. A stream of receivers nobody mentions that a demand joined: it stays
/// whole the first time and is shared the second time.
/// </remarks>
internal static class SecondRun
{
    /// <summary>Says how a second run differs; null when it does not, or need not be the same.</summary>
    public static string? Differs(TinyInstance tiny, AssignmentResult result)
    {
        if (tiny.Options.KeepUnlisted || SharesBuses(tiny.Show) || HasJoined(tiny, result))
            return null;

        var again = AssignCases.Assign(result.Show, tiny.Options);
        return AssignCases.Json(again.Show) == AssignCases.Json(result.Show)
            ? null
            : $"The second run writes another patch: {result.Objective} and then {again.Objective}.";
    }

    private static bool SharesBuses(Show show)
    {
        var buses = show.Feeds.SelectMany(feed => Enumerable.Range(0, feed.Source.Width).Select(i => feed.Source[i])).ToList();
        return buses.Distinct().Count() != buses.Count;
    }

    private static bool HasJoined(TinyInstance tiny, AssignmentResult result) =>
        new AssignmentFacts(tiny.Show, tiny.Options, _ => null).StayingStreams.Any(stream =>
            !stream.Keep && result.Show.Patch.Streams.Any(now => now.Id == stream.Id && now.To.Count > stream.To.Count)
        );
}
