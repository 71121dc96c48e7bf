using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>What the patch says about the phantom power and the gain of inputs; of several entries for an input the first that says something counts.</summary>
internal sealed class InputTable
{
    private readonly RuleContext context;

    /// <summary>For each input the positions of the settings that count for it; -1 for none.</summary>
    private readonly Dictionary<int, (int First, int Phantom, int Owner)> states;

    private readonly HashSet<int> speaking = [];

    public InputTable(RuleContext context)
    {
        this.context = context;
        var points = 0L;
        foreach (var settings in context.InputSettings)
        {
            points += settings.At.Width;
        }

        states = new Dictionary<int, (int First, int Phantom, int Owner)>((int)Math.Min(points, context.PointCount));
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
                var known = states.GetValueOrDefault(first.Value + position, (First: i, Phantom: -1, Owner: -1));
                states[first.Value + position] = (
                    known.First,
                    known.Phantom < 0 && settings.Phantom is not null ? i : known.Phantom,
                    known.Owner < 0 && settings.GainOwner is not null ? i : known.Owner
                );
            }
        }
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static InputTable Of(RuleContext context) => context.Shared(static asking => new InputTable(asking));

    /// <summary>Whether phantom power is on; null when nothing was said.</summary>
    public bool? Phantom(PointIndex input) =>
        states.TryGetValue(input.Value, out var state) && state.Phantom >= 0 ? context.InputSettings[state.Phantom].Phantom : null;

    /// <summary>True when something is said about the phantom power of any input.</summary>
    public bool SpeaksOfPhantom() => speaking.Count > 0;

    /// <summary>True when something is said about the phantom power of any input of a device.</summary>
    public bool SpeaksOfPhantom(DeviceNode device) => speaking.Contains(device.Index);

    /// <summary>The console that sets the gain; null when none was named.</summary>
    public Id<Device>? Owner(PointIndex input) => OwnerIndex(input) is var index and >= 0 ? context.InputSettings[index].GainOwner : null;

    /// <summary>Position of the settings that name the console, from 0; -1 when none do.</summary>
    public int OwnerIndex(PointIndex input) => states.TryGetValue(input.Value, out var state) ? state.Owner : -1;

    /// <summary>Position of the settings that speak of an input's phantom power, from 0; -1 when none do.</summary>
    public int IndexOf(PointIndex input) => states.TryGetValue(input.Value, out var state) ? (state.Phantom >= 0 ? state.Phantom : state.First) : -1;
}
