using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Resilience;

/// <summary>Reports clocks whose backup hangs on the supply of their leader.</summary>
/// <remarks>
/// One finding for each clock of a network that carries streams; entities are the clock and the supply. Nothing is judged in a rig that names fewer than two
/// supplies, nor of devices of which one names none.
/// </remarks>
public sealed class ClockBackupPower : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR8004",
            Name = "clock-backup-power",
            Title = "Clock backup on the leader's supply",
            Family = RuleFamily.Resilience,
            Severity = Severity.Warning,
            Checks = "The device that leads a clock and the one that takes over do not both hang on one supply alone.",
            Why = "The breaker that takes the leader takes its backup too, and everything that is left falls silent until it agrees on another clock.",
            Remedy = "Name a backup on another supply, or plug one of the two into another supply.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Rig.Clocks.IsEmpty || context.Streams.Count == 0 || !Supplies.HasTwo(context))
        {
            return;
        }

        var map = ClockMap.Of(context);
        for (var i = 0; i < context.Rig.Clocks.Count; i++)
        {
            var clock = context.Rig.Clocks[i];
            if (
                !map.IsUsed(i)
                || context.Device(clock.Leader) is not { } leader
                || clock.Backup is not { } named
                || context.Device(named) is not { } backup
                || backup == leader
                || !Supplies.AreStated([leader, backup])
            )
            {
                continue;
            }

            context.LookedAt();
            if (Supplies.Common([leader, backup]) is { } supply)
            {
                context.Report(
                    $"{backup.Id} takes over clock '{clock.Id}' from {leader.Id}, but both hang on supply '{supply}' alone.",
                    $"/rig/clocks/{i}/backup",
                    Entity.Of("clock", clock.Id),
                    Entity.Of("supply", supply)
                );
            }
        }
    }
}
