using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Repairs of settings that leave a choice: what the show says elsewhere is the likeliest one.</summary>
internal static class SettingRepairs
{
    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding) =>
        finding.Rule switch
        {
            "RR6006" => Owners(show),
            "RR5009" => Backups(show, finding),
            _ => [],
        };

    /// <summary>Who owns most of the gains owns those that nobody owns.</summary>
    private static IEnumerable<OtherRepair> Owners(ResolvedShow show)
    {
        var inputs = show.Document.Patch.Inputs;
        var owners = inputs
            .Where(input => input.GainOwner is not null)
            .GroupBy(input => input.GainOwner!.Value)
            .OrderByDescending(owner => owner.Count())
            .ThenBy(owner => owner.Key.Value, StringComparer.Ordinal);
        foreach (var owner in owners)
        {
            var edits = new List<ShowEdit>();
            for (var i = inputs.Count - 1; i >= 0; i--)
            {
                if (inputs[i].GainOwner is null)
                {
                    edits.Add(ShowEdit.Replace(ShowLists.Inputs, i, inputs[i], inputs[i] with { GainOwner = owner.Key }));
                }
            }

            if (edits.Count > 0)
            {
                var runs = string.Join(", ", inputs.Where(input => input.GainOwner is null).Select(input => input.At));
                yield return new OtherRepair(
                    $"Nobody owns the gain of {runs}",
                    Fix.Of(
                        $"Let '{owner.Key}' own the gain of {runs}, as it owns most others",
                        FixSafety.Unsafe,
                        edits.ToValueList(),
                        "Agree on it with both desks first."
                    )
                );
            }
        }
    }

    private static IEnumerable<OtherRepair> Backups(ResolvedShow show, Finding finding)
    {
        var clocks = show.Document.Rig.Clocks;
        for (var i = 0; i < clocks.Count; i++)
        {
            for (var d = 0; clocks[i].Backup is null && d < show.Devices.Count; d++)
            {
                var device = show.Devices[d];
                if (device.Id != clocks[i].Leader && finding.Message.Contains(device.Id.Value, StringComparison.Ordinal))
                {
                    yield return new OtherRepair(
                        $"Clock '{clocks[i].Id}' has no backup",
                        Fix.Of(
                            $"Name '{device.Id}' as the backup of clock '{clocks[i].Id}'",
                            FixSafety.Unsafe,
                            [ShowEdit.Replace(ShowLists.Clocks, i, clocks[i], clocks[i] with { Backup = device.Id })],
                            "Set it at the device as well."
                        )
                    );
                }
            }
        }
    }
}
