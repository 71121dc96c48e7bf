using RoutingRules.Fixing;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Takes out the route, stream or cable that a finding points at.</summary>
internal static class Removals
{
    /// <summary>Rules that speak of something that is there and should not be; of what is only written wrong another repair is wanted.</summary>
    private static readonly HashSet<string> Rules =
    [
        "RR2001",
        "RR2002",
        "RR2005",
        "RR2009",
        "RR2010",
        "RR2014",
        "RR3002",
        "RR3011",
        "RR4002",
        "RR4005",
        "RR4007",
        "RR6009",
        "RR9003",
        "RR9004",
        "RR9005",
    ];

    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding)
    {
        if (!Rules.Contains(finding.Rule))
        {
            return [];
        }

        var patch = show.Document.Patch;
        var change = new PatchChange();
        var title = "";
        if (
            finding.Pointer.StartsWith("/patch/routes/", StringComparison.Ordinal)
            && finding.Number(2) is var route
            && route >= 0
            && route < patch.Routes.Count
        )
        {
            change.Routes.Replaced[route] = [];
            title = patch.Routes[route].From is null
                ? $"the clearing of {patch.Routes[route].To}"
                : $"the route from {patch.Routes[route].From} to {patch.Routes[route].To}";
        }
        else if (
            finding.Pointer.StartsWith("/patch/streams/", StringComparison.Ordinal)
            && finding.Number(2) is var stream
            && stream >= 0
            && stream < patch.Streams.Count
        )
        {
            change.Streams.Replaced[stream] = [];
            title = $"stream '{patch.Streams[stream].Id}'";
        }
        else if (
            finding.Pointer.StartsWith("/rig/cables/", StringComparison.Ordinal)
            && finding.Number(2) is var cable
            && cable >= 0
            && cable < show.Cables.Count
        )
        {
            change.Cables.Replaced[cable] = [];
            title = $"the cable from {show.Cables[cable].Model.From} to {show.Cables[cable].Model.To}";
        }

        return title.Length == 0
            ? []
            :
            [
                new OtherRepair(
                    $"{char.ToUpperInvariant(title[0])}{title[1..]} is one too many",
                    Fix.Of($"Take out {title}", FixSafety.Unsafe, change.Edits(show.Document), CauseWords.Caution)
                ),
            ];
    }
}
