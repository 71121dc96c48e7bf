using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Template;

/// <summary>Notes devices that stand in no zone, in rigs that have zones.</summary>
public sealed class DeviceWithoutZone : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "TP1001",
            Name = "device-without-zone",
            Title = "Device without a zone",
            Family = RuleFamily.Points,
            Severity = Severity.Note,
            Checks = "Every device stands in a zone, where the rig has zones.",
            Why = "The line check walks from zone to zone and passes by what stands in none.",
            Remedy = "Name the zone of the device.",
            Source = "common practice, no source",
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(subject);
        if (context.Rig.Zones.IsEmpty)
        {
            // Nothing to judge here: the device does not count as looked at.
            context.LookedAt(0);
            return;
        }

        if (subject.Model.Zone is null)
        {
            context.Report($"'{subject.DisplayName}' stands in no zone.", $"/rig/devices/{subject.Index}", Entity.Of("device", subject.Id));
        }
    }
}
