using RoutingRules.Model;

namespace RoutingRules.Signal;

/// <summary>The settings of inputs point by point.</summary>
internal static class InputMap
{
    /// <summary>What is said about the phantom power of each input; the first entry that says something counts.</summary>
    public static Dictionary<Point, bool> Phantom(Show show) => PointMap.First(show.Patch.Inputs, static input => input.At, static input => input.Phantom);

    /// <summary>The console that owns the gain of each input, where one is named.</summary>
    public static Dictionary<Point, Id<Device>> Owners(IEnumerable<InputSettings> inputs) =>
        PointMap.First(inputs, static input => input.At, static input => input.GainOwner);

    /// <summary>The show with other settings for one input.</summary>
    public static Show With(Show show, Point at, Func<InputSettings, InputSettings> change)
    {
        var inputs = new List<InputSettings>();
        var setting = new InputSettings { At = Runs.One(at) };
        var isFound = false;
        foreach (var input in show.Patch.Inputs)
        {
            if (input.At.Device != at.Device || input.At.Group != at.Group || at.Number < input.At.First || at.Number > input.At.Last)
            {
                inputs.Add(input);
                continue;
            }

            setting = isFound ? setting : input with { At = Runs.One(at) };
            isFound = true;
            Keep(inputs, input, input.At.First, at.Number - 1);
            Keep(inputs, input, at.Number + 1, input.At.Last);
        }

        inputs.Add(change(setting));
        return show with { Patch = show.Patch with { Inputs = inputs.ToValueList() } };
    }

    private static void Keep(List<InputSettings> inputs, InputSettings input, int first, int last)
    {
        if (first <= last)
        {
            inputs.Add(input with { At = new PointRange(input.At.Device, input.At.Group, first, last) });
        }
    }
}
