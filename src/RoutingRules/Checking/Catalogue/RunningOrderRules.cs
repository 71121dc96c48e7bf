using RoutingRules.Rules;

namespace RoutingRules.Checking.Catalogue;

/// <summary>What is reported about a running order itself.</summary>
public static class RunningOrderRules
{
    /// <summary>A name that the house does not have.</summary>
    public static RuleDescriptor RunReferenceUnknown { get; } =
        Of(
            "RR1013",
            "run-reference-unknown",
            "Running order names what is not there",
            Severity.Error,
            "Every locked feed is a house feed, and everything an act does without is a house feed or a house line.",
            "A misspelt name would leave the feed unlocked, or keep the line patched.",
            "Correct the name."
        );

    /// <summary>An act that changes what is locked.</summary>
    public static RuleDescriptor LockedFeedChanged { get; } =
        Of(
            "RR1014",
            "locked-feed-changed",
            "Act changes a locked feed",
            Severity.Error,
            "No act writes a feed with the id of a locked one, does without it, or has it somewhere else than the act before.",
            "Locked feeds are the house system: whoever set it up relies on it for the whole day.",
            "Leave the feed to the house, or take it out of the locked ones."
        );

    /// <summary>Acts that are not in the order of their times, or share an id.</summary>
    public static RuleDescriptor ActsOutOfOrder { get; } =
        Of(
            "RR1015",
            "acts-out-of-order",
            "Acts are out of order",
            Severity.Error,
            "Acts have different ids and stand in the order of their days and start times.",
            "Changeovers are planned from each act to the next one in the list: a wrong order plans the wrong changeovers.",
            "Put the acts in order, or correct the times."
        );

    /// <summary>A changeover that takes longer than there is time.</summary>
    public static RuleDescriptor ChangeoverTooShort { get; } =
        Of(
            "RR1016",
            "changeover-too-short",
            "Changeover takes longer than there is time",
            Severity.Warning,
            "The estimated time of a changeover, with one person at each place, is not more than its minutes.",
            "What does not fit is left out under pressure, and it is the checks that are left out.",
            "Prepare more during the act before, add people, use the same inputs for what both acts have, or ask for more time."
        );

    /// <summary>A pack worn by two people in one act.</summary>
    public static RuleDescriptor PackUsedTwice { get; } =
        Of(
            "RR1017",
            "pack-used-twice",
            "Pack used twice in one act",
            Severity.Warning,
            "In one act no two in-ear feeds of different people name the same pack.",
            "One of the two people hears the other one's mix, or nothing.",
            "Give one of them another pack."
        );

    /// <summary>All, in the order of their ids.</summary>
    public static IReadOnlyList<RuleDescriptor> All { get; } = [RunReferenceUnknown, LockedFeedChanged, ActsOutOfOrder, ChangeoverTooShort, PackUsedTwice];

    private static RuleDescriptor Of(string id, string name, string title, Severity severity, string checks, string why, string remedy) =>
        new()
        {
            Id = id,
            Name = name,
            Title = title,
            Family = RuleFamily.Document,
            Severity = severity,
            Checks = $"{checks} Speaks about running orders.",
            Why = why,
            Remedy = remedy,
            Source = "common practice, no source",
        };
}
