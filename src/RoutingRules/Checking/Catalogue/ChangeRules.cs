using RoutingRules.Rules;

namespace RoutingRules.Checking.Catalogue;

/// <summary>What is reported about going from one show to another; either show alone cannot have it.</summary>
public static class ChangeRules
{
    /// <summary>Phantom power that stays on from the act before.</summary>
    public static RuleDescriptor PhantomCarriedOver { get; } =
        new()
        {
            Id = "RR6012",
            Name = "phantom-carried-over",
            Title = "Phantom power carried over",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Checks =
                "Where phantom power was on and something else is plugged in now, the second show says whether it is on, unless the new line needs "
                + "it. Speaks when two shows are compared.",
            Why = "Inputs keep their phantom power until somebody switches it: 48 V can damage what does not expect it, and plugging into it is a loud thump.",
            Remedy = "Say under patch.inputs whether phantom is on, and switch it off before the plug is pulled.",
            Source = "common practice, no source; the supply itself: IEC 61938",
        };

    /// <summary>Something else where an in-ear mix was.</summary>
    public static RuleDescriptor EarsGetAnotherSignal { get; } =
        new()
        {
            Id = "RR9004",
            Name = "ears-get-another-signal",
            Title = "In-ear output gets another kind of signal",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Checks =
                "An output that went into somebody's ears in the first show, by the rig or by its feed, carries in the second nothing, or again a "
                + "mix that a feed has there for ears. Speaks when two shows are compared.",
            Why = "A pack that is still worn or still plugged in would put a main mix or a raw line straight on somebody's ears.",
            Remedy = "Leave the output silent or use another one; otherwise unplug the transmitter first and check that nobody wears its pack.",
            Source = "common practice, no source",
        };

    /// <summary>All, in the order of their ids.</summary>
    public static IReadOnlyList<RuleDescriptor> All { get; } = [PhantomCarriedOver, EarsGetAnotherSignal];
}
