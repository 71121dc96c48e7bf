using RoutingRules.Model;
using RoutingRules.Reports.Names;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Input;

/// <summary>Takes what a person calls a point, a feed or a line: the document's way of writing it, or its name.</summary>
internal sealed class CalledByName(ResolvedShow show)
{
    private readonly NameLookup lookup = new(show);

    /// <summary>The one point that is meant.</summary>
    /// <exception cref="UsageException">None is called so, or several.</exception>
    public PointRange Point(string text)
    {
        var range = Points(text, null);
        return range.Width == 1 ? range : throw new UsageException($"'{text}' names {range.Width} points; ask about one, such as {range[0]}.");
    }

    /// <summary>The run of points that is meant.</summary>
    /// <param name="text">An address, or the name of one point.</param>
    /// <param name="option">The option it was given to; null for an argument.</param>
    /// <exception cref="UsageException">None is called so, or several.</exception>
    public PointRange Points(string text, string? option)
    {
        var before = option is null ? "" : $"{option}: ";
        if (PointRange.TryParse(text, out var range, out var problem))
        {
            return range;
        }

        var points = lookup.Points(text);
        return points.Count switch
        {
            1 => new PointRange(points[0].Device, points[0].Group, points[0].Number, points[0].Number),
            > 1 => throw new UsageException($"{before}'{text}' is what several points are called; ask about one: {NameList.Of(points.Select(Called))}."),
            _ when text.Length == 0 || text.Contains('/', StringComparison.Ordinal) => throw new UsageException($"{before}the point '{text}' {problem}."),
            _ => throw new UsageException(
                $"{before}nothing is called '{text}'.{Near(text)} Write an address such as desk/aux/3, or the label of a device with the mark on its panel, "
                    + "or a feed or a line for where it starts."
            ),
        };
    }

    /// <summary>The id of the feed or line that is meant; what is no name of one is left for whoever knows the ids.</summary>
    /// <exception cref="UsageException">Several are called so.</exception>
    public string Subject(string text)
    {
        var subjects = lookup.Subjects(text);
        return subjects.Count > 1 && !subjects.Contains(text)
                ? throw new UsageException($"'{text}' is what several are called; ask about one: {NameList.Of(subjects)}.")
            : subjects.Count == 1 ? subjects[0]
            : text;
    }

    private string Called(Point point) => PanelNames.Of(NameStyle.Panel, show).In(point.ToString());

    private string Near(string text) => lookup.Nearest(text) is { } near ? $" Did you mean '{near}'?" : "";
}
