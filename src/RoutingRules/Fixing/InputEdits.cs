using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Edits of the settings of inputs.</summary>
internal static class InputEdits
{
    /// <summary>
    /// Sets the phantom power of inputs. Settings that speak of others too are cut; what nothing speaks of gets new settings at the end of the list.
    /// </summary>
    public static ValueList<ShowEdit> SetPhantom(FixContext context, IReadOnlyCollection<PointIndex> inputs, bool isOn)
    {
        var graph = context.Resolved.Graph;
        var settings = context.Show.Patch.Inputs;
        var open = new SortedSet<PointIndex>(inputs);
        var first = new Dictionary<PointIndex, int>();
        for (var i = 0; i < settings.Count; i++)
        {
            for (
                var position = 0;
                settings[i].Phantom is not null && graph.Find(settings[i].At, out var at) == ConnectionState.Connected && position < settings[i].At.Width;
                position++
            )
            {
                if (open.Contains(at + position))
                {
                    first.TryAdd(at + position, i);
                }
            }
        }

        open.ExceptWith(first.Keys);
        var edits = new List<ShowEdit>();
        for (var i = settings.Count - 1; i >= 0; i--)
        {
            var before = settings[i];
            if (
                graph.Find(before.At, out var at) == ConnectionState.Connected
                && Cut(before, position => first.TryGetValue(at + position, out var index) && index == i, part => part with { Phantom = isOn }) is { } parts
            )
            {
                ListEdits.Exchange(edits, ShowLists.Inputs, i, before, parts);
            }
        }

        var end = settings.Count + edits.Count(edit => edit.Kind == EditKind.Insert);
        foreach (var input in open)
        {
            edits.Add(ShowEdit.Insert(ShowLists.Inputs, end++, new InputSettings { At = graph.Address(input, 1), Phantom = isOn }));
        }

        return edits.ToValueList();
    }

    /// <summary>The settings in parts, those of some positions changed; null when no position is.</summary>
    public static List<InputSettings>? Cut(InputSettings settings, Predicate<int> isChanged, Func<InputSettings, InputSettings> change)
    {
        var parts = new List<InputSettings>();
        var isAny = false;
        for (var start = 0; start < settings.At.Width; )
        {
            var end = start + 1;
            while (end < settings.At.Width && isChanged(end) == isChanged(start))
            {
                end++;
            }

            var part = settings with { At = RunCuts.Part(settings.At, start, end - start) };
            isAny |= isChanged(start);
            parts.Add(isChanged(start) ? change(part) : part);
            start = end;
        }

        return isAny ? parts : null;
    }
}
