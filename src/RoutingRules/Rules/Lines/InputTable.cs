using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>What the patch says about the phantom power and the gain of inputs; of several entries for an input the first that says something counts.</summary>
internal sealed class InputTable
{
    private readonly Dictionary<int, (bool? Phantom, Id<Device>? Owner, int PhantomIndex)> states = [];

    private readonly HashSet<int> speaking = [];

    public InputTable(RuleContext context)
    {
        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            if (context.Find(settings.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            if (settings.Phantom is not null)
            {
                speaking.Add(context.DeviceOf(first).Index);
            }

            for (var position = 0; position < settings.At.Width; position++)
            {
                var known = states.GetValueOrDefault(first.Value + position, (null, null, i));
                states[first.Value + position] = (
                    known.Phantom ?? settings.Phantom,
                    known.Owner ?? settings.GainOwner,
                    known.Phantom is null && settings.Phantom is not null ? i : known.PhantomIndex);
            }
        }
    }

    /// <summary>Whether phantom power is on; null when nothing was said.</summary>
    public bool? Phantom(PointIndex input) => states.GetValueOrDefault(input.Value).Phantom;

    /// <summary>True when something is said about the phantom power of any input of a device.</summary>
    public bool SpeaksOfPhantom(DeviceNode device) => speaking.Contains(device.Index);

    /// <summary>The console that sets the gain; null when none was named.</summary>
    public Id<Device>? Owner(PointIndex input) => states.GetValueOrDefault(input.Value).Owner;

    /// <summary>Position of the settings that speak of an input's phantom power, from 0; -1 when none do.</summary>
    public int IndexOf(PointIndex input) => states.TryGetValue(input.Value, out var state) ? state.PhantomIndex : -1;
}
