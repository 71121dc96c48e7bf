using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Names the only other device that suits as backup of a clock; where there are several, they are choices, the best first.</summary>
internal sealed class NameClockBackup : FixProvider
{
    public override string RuleId => "RR5009";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var clocks = context.Show.Rig.Clocks;
        var index = finding.Number(2);
        if (index < 0 || index >= clocks.Count)
        {
            return [];
        }

        var clock = clocks[index];
        var others = context
            .Resolved.Devices.Where(device =>
                device.Id != clock.Leader
                && ClockBackupMissing.Suitability(device) >= 0
                && (device.Profile.SampleRates.IsEmpty || device.Profile.SampleRates.Contains(clock.SampleRate))
            )
            .OrderBy(ClockBackupMissing.Suitability)
            .ThenBy(device => device.Id)
            .ToList();
        return others.Count switch
        {
            0 => [],
            1 =>
            [
                Fix.Of(
                    $"Name {others[0].Id} as backup of clock '{clock.Id}'",
                    FixSafety.Unsafe,
                    [ShowEdit.Replace(ShowLists.Clocks, index, clock, clock with { Backup = others[0].Id })],
                    "Set it up in the device as well, and see that it has its own supply."
                ),
            ],
            _ =>
            [
                Fix.Manual(
                    $"Choose a backup for clock '{clock.Id}': one that stays on all day and has its own supply",
                    others.Select(device => $"Name {device.Id}").ToValueList()
                ),
            ],
        };
    }
}
