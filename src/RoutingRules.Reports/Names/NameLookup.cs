using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Names;

/// <summary>Finds what a person calls by a name: a point by the label of its device and its mark, a feed or a line by its name.</summary>
/// <remarks>Upper and lower case, and how many spaces stand between words, do not matter. Immutable, thread safe.</remarks>
public sealed class NameLookup
{
    private readonly ResolvedShow show;

    /// <summary>Names of a show.</summary>
    /// <param name="show">The show.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public NameLookup(ResolvedShow show)
    {
        ArgumentNullException.ThrowIfNull(show);
        this.show = show;
    }

    /// <summary>The points that are called so, in point order: connectors, buses, channels and slots of a device, or where a feed or a line starts.</summary>
    /// <param name="text">For example <c>SR box B4</c>, <c>SR box output 5</c>, <c>House desk channel 36</c> or <c>Lead voice</c>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public IReadOnlyList<Point> Points(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var name = Plain(text);
        var found = new SortedSet<int>();
        foreach (var device in show.Devices)
        {
            foreach (var called in new[] { device.DisplayName, device.Id.Value }.Distinct(StringComparer.Ordinal))
            {
                if (name.StartsWith($"{Plain(called)} ", StringComparison.OrdinalIgnoreCase))
                {
                    Add(found, device, name[(Plain(called).Length + 1)..]);
                }
            }
        }

        if (found.Count == 0)
        {
            found.UnionWith(show.Feeds.Where(feed => IsCalled(name, feed.Model.Id.Value, feed.Model.Name)).Select(feed => feed.Source.Value));
            found.UnionWith(show.Lines.Where(line => IsCalled(name, line.Model.Id.Value, line.Model.Name)).Select(line => line.Source.Value));
        }

        return [.. found.Where(index => !new PointIndex(index).IsNone).Select(index => show.Graph.Address(new PointIndex(index)))];
    }

    /// <summary>The ids of the feeds and lines that are called so, feeds first, in the order of the document.</summary>
    /// <param name="text">The name, for example <c>Lead voice</c>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public IReadOnlyList<string> Subjects(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var name = Plain(text);
        return
        [
            .. show.Feeds.Where(feed => IsCalled(name, feed.Model.Id.Value, feed.Model.Name)).Select(feed => feed.Model.Id.Value),
            .. show.Lines.Where(line => IsCalled(name, line.Model.Id.Value, line.Model.Name)).Select(line => line.Model.Id.Value),
        ];
    }

    /// <summary>The name of a device, feed or line that was probably meant; null when none is close.</summary>
    /// <param name="text">What was written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public string? Nearest(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Spelling.Nearest(
            Plain(text),
            [
                .. show.Devices.Select(device => device.DisplayName),
                .. show.Feeds.Select(feed => feed.Model.Name ?? feed.Model.Id.Value),
                .. show.Lines.Select(line => line.Model.Name ?? line.Model.Id.Value),
            ]
        );
    }

    private static void Add(SortedSet<int> found, DeviceNode device, string rest)
    {
        foreach (var group in device.Groups)
        {
            var names = new GroupNames(group.Model);
            var isConnector = group.Kind is PortKind.Input or PortKind.Output or PortKind.Network;
            for (var number = 1; number <= group.Count; number++)
            {
                var mark = names.Mark(number);
                if (
                    (isConnector && IsSame(rest, mark))
                    || IsSame(rest, $"{names.One} {mark}")
                    || IsSame(rest, $"{group.Id} {mark}")
                    || IsSame(rest, $"{names.One} {number}")
                )
                {
                    found.Add(device.First(group).Value + number - 1);
                }
            }
        }
    }

    private static bool IsCalled(string name, string id, string? title) => IsSame(name, id) || (title is not null && IsSame(name, Plain(title)));

    private static bool IsSame(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
