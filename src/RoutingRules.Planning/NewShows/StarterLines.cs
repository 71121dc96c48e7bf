using System.Globalization;
using RoutingRules.Model;

namespace RoutingRules.Planning.NewShows;

/// <summary>The lines of a starting show, by what they are asked for as.</summary>
internal static class StarterLines
{
    /// <summary>A line that may enter at some boxes.</summary>
    public static Line Line(StarterPart part, int number, ValueList<Id<Device>> boxes)
    {
        var (id, name) = part switch
        {
            StarterPart.Vocals => ("vocal", "Vocal"),
            StarterPart.Microphones => ("mic", "Microphone"),
            StarterPart.PhantomLines => ("direct", "Direct box"),
            _ => ("stereo", "Stereo line"),
        };
        var line = new Line
        {
            Id = new(Numbered(id, number, '-')),
            Name = Numbered(name, number),
            Kind = LineKind.Microphone,
            From = new LineOrigin { Devices = boxes },
        };
        return part switch
        {
            StarterPart.Vocals => line with { Priority = Priority.High, Equipment = "dynamic microphone", Stand = "straight" },
            StarterPart.Microphones => line with { Equipment = "dynamic microphone", Stand = "short boom" },
            StarterPart.PhantomLines => line with { Phantom = PhantomNeed.Required, Equipment = "active direct box" },
            _ => line with { Kind = LineKind.Line, Phantom = PhantomNeed.Forbidden, Width = 2 },
        };
    }

    /// <summary>What stands on the displays for it.</summary>
    public static string Label(StarterPart part, int number) =>
        Numbered(
            part switch
            {
                StarterPart.Vocals => "VOCAL",
                StarterPart.Microphones => "MIC",
                StarterPart.PhantomLines => "DI",
                _ => "LINE",
            },
            number
        );

    /// <summary>A word with its number.</summary>
    public static string Numbered(string word, int number, char between = ' ') => string.Create(CultureInfo.InvariantCulture, $"{word}{between}{number}");
}
