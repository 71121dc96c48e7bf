using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Sets phantom power, gain owners and channel labels for the lines of an act whose patch was worked out.</summary>
internal static class ActSettings
{
    /// <summary>The show with its settings.</summary>
    /// <param name="show">The show, patched.</param>
    /// <param name="before">Settings of inputs before the act: where this act has no line they stay, but phantom power goes off.</param>
    public static Show Apply(ResolvedShow show, ValueList<InputSettings> before)
    {
        var result = show.Document with { Patch = show.Document.Patch with { Inputs = before, Routes = LiveRoutes.Of(show) } };
        var used = new HashSet<Point>();
        foreach (var line in show.Lines)
        {
            var demand = show.Demands[line.Demand];
            foreach (var input in InputsOf(show, demand).Distinct())
            {
                used.Add(input);
                var supplies = show.Graph.GroupOf(show.Graph.Find(input)).Model.Phantom;
                var owner =
                    line.Model.To.IsEmpty ? null
                    : show.Graph.Device(line.Model.To[0].Device) is { Profile.Kind: var kind } console && kind == DeviceKind.Console ? (Id<Device>?)console.Id
                    : null;
                result = InputMap.With(
                    result,
                    input,
                    settings =>
                        settings with
                        {
                            Phantom = supplies ? line.Model.Phantom == PhantomNeed.Required : settings.Phantom,
                            GainOwner = settings.GainOwner ?? (show.Graph.GroupOf(show.Graph.Find(input)).Model.Level == SignalLevel.Mic ? owner : null),
                        }
                );
            }
        }

        foreach (var (input, _) in InputMap.Phantom(result).Where(pair => pair.Value && !used.Contains(pair.Key)))
        {
            result = InputMap.With(result, input, settings => settings with { Phantom = false });
        }

        return result with
        {
            Patch = result.Patch with { Inputs = Join(result.Patch.Inputs), Labels = Labels(show, result.Patch.Labels) },
        };
    }

    private static IEnumerable<Point> InputsOf(ResolvedShow show, DemandNode demand)
    {
        if (demand.Existing.IsNone || !demand.Line!.Source.IsNone)
        {
            return [];
        }

        var at = demand.Line.Model.From.At.IsEmpty ? [show.Graph.Address(demand.Existing, demand.Width)] : demand.Line.Model.From.At;
        return at.Where(run => show.Graph.Find(run, out var first) == ConnectionState.Connected && show.Graph.GroupOf(first).Kind == PortKind.Input)
            .SelectMany(run => Enumerable.Range(0, run.Width).Select(i => run[i]));
    }

    /// <summary>Channels of consoles show the lines of this act, and the feeds that go to a channel; other labels stay.</summary>
    private static ValueList<PointLabel> Labels(ResolvedShow show, ValueList<PointLabel> labels)
    {
        var writer = new ChannelLabels(show.Graph);
        foreach (var line in show.Lines)
        {
            foreach (var to in line.Model.To.Where(to => IsChannel(show, to)))
            {
                writer.Write(to, line.DisplayName);
            }
        }

        foreach (var demand in show.Demands.Where(demand => demand.Feed is not null && !demand.Existing.IsNone))
        {
            if (show.Graph.Address(demand.Existing, demand.Width) is var at && IsChannel(show, at))
            {
                writer.Write(at, demand.DisplayName);
            }
        }

        return labels.Where(label => !IsChannel(show, label.At)).Concat(writer.Labels()).ToValueList();
    }

    private static bool IsChannel(ResolvedShow show, PointRange at) =>
        show.Graph.Find(at, out var first) == ConnectionState.Connected
        && show.Graph.GroupOf(first).Kind == PortKind.Sink
        && show.Graph.DeviceOf(first).Profile.Kind == DeviceKind.Console;

    /// <summary>Neighbours with equal settings as one entry.</summary>
    public static ValueList<InputSettings> Join(ValueList<InputSettings> inputs)
    {
        var joined = new List<InputSettings>();
        foreach (
            var input in inputs
                .OrderBy(input => input.At.Device.Value, StringComparer.Ordinal)
                .ThenBy(input => input.At.Group.Value, StringComparer.Ordinal)
                .ThenBy(input => input.At.First)
        )
        {
            var last = joined.Count > 0 ? joined[^1] : null;
            if (last is not null && Runs.Follow(last.At[last.At.Width - 1], input.At[0]) && last == input with { At = last.At })
            {
                joined[^1] = last with { At = new PointRange(last.At.Device, last.At.Group, last.At.First, input.At.Last) };
            }
            else
            {
                joined.Add(input);
            }
        }

        return joined.ToValueList();
    }
}
