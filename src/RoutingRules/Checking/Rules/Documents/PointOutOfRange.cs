using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports addresses with numbers beyond the end of a port group, and stream channels beyond the end of a stream.</summary>
/// <remarks>One finding for each run of missing numbers of a group, however often it is named.</remarks>
public sealed class PointOutOfRange : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1103",
            Name = "point-out-of-range",
            Title = "Number the device does not have",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Every numbered point is one that its device has at the sample rate it runs at, and a receiver takes only channels that its stream has.",
            Why = "What is patched to a connector or slot that is not there goes nowhere; the counts of some devices shrink at higher sample rates.",
            Remedy = "Use a number the device has, or correct the device's profile or sample rate.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, The Active Map (indices inside the declared channels)",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(PlacesThatName.Points(context));
        List<(DeviceNode Device, GroupNode Group, int First, int Last, Place Place)>? found = null;
        foreach (var (at, state, place) in AddressWalk.Broken(context))
        {
            if (state == ConnectionState.OutOfRange && context.Device(at.Device) is { } device && context.ProfileProblems(device).IsEmpty)
            {
                var group = device.Group(at.Group)!;
                (found ??= []).Add((device, group, Math.Max(at.First, group.Count + 1), at.Last, place));
            }
        }

        if (found is not null)
        {
            ReportRuns(context, found);
        }

        var once = new OnceOnly(context);
        foreach (var stream in context.Streams)
        {
            foreach (var receiver in stream.Receivers)
            {
                if (
                    receiver.State == ConnectionState.OutOfRange
                    && receiver.Model.Channels is { } channels
                    && context.Find(receiver.Model.At, out _) == ConnectionState.Connected
                )
                {
                    once.Report(
                        $"Stream '{stream.Model.Id}' has {stream.Model.From.Width} channels, but {receiver.Model.At} takes channels {channels} of it.",
                        string.Create(CultureInfo.InvariantCulture, $"/patch/streams/{stream.Index}/to/{receiver.Index}/channels"),
                        Entity.Of("stream", stream.Model.Id),
                        Entity.Of("receiver", receiver.Model.At),
                        Entity.Of("channels", channels.ToString())
                    );
                }
            }
        }
    }

    private static void ReportRuns(RuleContext context, List<(DeviceNode Device, GroupNode Group, int First, int Last, Place Place)> found)
    {
        var start = 0;
        // A stable sort: of several places that name the same numbers the first in the document is shown.
        var ordered = found.OrderBy(hit => hit.Device.Index).ThenBy(hit => hit.Group.Index).ThenBy(hit => hit.First).ToArray();
        while (start < ordered.Length)
        {
            var (device, group, first, last, place) = ordered[start];
            var next = start + 1;
            while (next < ordered.Length && ordered[next].Device == device && ordered[next].Group == group && ordered[next].First <= last + 1)
            {
                last = Math.Max(last, ordered[next++].Last);
            }

            var has =
                group.Count == 0
                    ? string.Create(CultureInfo.InvariantCulture, $"has no points in '{group.Id}' at {device.SampleRate} Hz")
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"has points 1 to {group.Count} in '{group.Id}'{(group.Model.Count is null ? $" at {device.SampleRate} Hz" : "")}"
                    );
            var others = (next - start) switch
            {
                1 => "",
                2 => " and in one other place",
                var places => $" and in {places - 1} other places",
            };
            var missing = new PointRange(device.Id, group.Id, first, last);
            context.Report(
                $"Device '{device.Id}' {has}, but {missing} is named in {place.Name}{others}.",
                place.Pointer,
                [Entity.Of("points", missing), .. Identities.Places(ordered[start..next].Select(hit => hit.Place))]
            );
            start = next;
        }
    }
}
