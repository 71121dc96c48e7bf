using RoutingRules.Rules;

namespace RoutingRules.Checking.Catalogue;

/// <summary>What is reported about waivers themselves: the part of family RR1 that is about decisions to live with a finding.</summary>
public static class WaiverRules
{
    /// <summary>A waiver whose last day has passed.</summary>
    public static RuleDescriptor WaiverExpired { get; } =
        new()
        {
            Id = "RR1011",
            Name = "waiver-expired",
            Title = "Waiver has expired",
            Family = RuleFamily.Document,
            Severity = Severity.Warning,
            Checks = "The last day of every waiver that covers a checked document has not passed; the day itself still counts.",
            Why = "A decision that was taken for one weekend would otherwise hide the fault for ever. An expired waiver excuses nothing.",
            Remedy = "Mend what it excused, or have its owner look again and set a new date.",
            Source = "common practice, no source",
        };

    /// <summary>A waiver that excuses nothing.</summary>
    public static RuleDescriptor WaiverStale { get; } =
        new()
        {
            Id = "RR1012",
            Name = "waiver-stale",
            Title = "Waiver fits nothing",
            Family = RuleFamily.Document,
            Severity = Severity.Warning,
            Checks = "Every waiver fits at least one finding of the documents it covers, as far as its rule could decide about them.",
            Why = "A waiver that outlives its finding would excuse the next one that looks like it, unseen.",
            Remedy = "Take the waiver out; if a name in it is misspelt, correct it.",
            Source = "common practice, no source",
        };

    /// <summary>Both, in the order of their ids.</summary>
    public static IReadOnlyList<RuleDescriptor> All { get; } = [WaiverExpired, WaiverStale];
}
