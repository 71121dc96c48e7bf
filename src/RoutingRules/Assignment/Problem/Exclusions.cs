using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>Devices, links and points an assignment must do without.</summary>
internal sealed class Exclusions
{
    private Exclusions(bool[] devices, bool[] links, List<(int First, int Width)> points)
    {
        Devices = devices;
        Links = links;
        Points = points;
    }

    public bool[] Devices { get; }

    /// <summary>Excluded links and links at excluded devices and jacks.</summary>
    public bool[] Links { get; }

    public List<(int First, int Width)> Points { get; }

    /// <summary>The points to do without, those of devices included, as points that do not work.</summary>
    public List<MarkedPoint> Marks(ResolvedShow show)
    {
        var runs = Points.Concat(
            show.Devices.Where(device => Devices[device.Index])
                .SelectMany(device => device.Groups.Select(group => (First: device.First(group).Value, Width: group.Count)))
        );
        return
        [
            .. runs.Select(run => new MarkedPoint
            {
                First = new(run.First),
                Width = run.Width,
                IsDead = true,
                Index = -1,
            }),
        ];
    }

    /// <summary>Reads the names.</summary>
    /// <exception cref="ArgumentException">A name is no device, link or point of the rig.</exception>
    public static Exclusions Read(ResolvedShow show, ValueList<string> names)
    {
        var devices = new bool[show.Devices.Count];
        var links = new bool[show.Links.Count];
        var points = new List<(int First, int Width)>();
        foreach (var name in names)
        {
            var known = false;
            foreach (var device in show.Devices)
            {
                known |= device.Id.Value == name && (devices[device.Index] = true);
            }

            foreach (var link in show.Links)
            {
                known |= link.Model.Id.Value == name && (links[link.Index] = true);
            }

            if (!known && PointRange.TryParse(name, out var range, out _) && show.Graph.Find(range, out var first) == ConnectionState.Connected)
            {
                points.Add((first.Value, range.Width));
                known = true;
            }

            if (!known)
            {
                throw new ArgumentException($"'{name}' is no device, link or point of the rig; name one of its ids or an address such as box/out/3.");
            }
        }

        foreach (var link in show.Links)
        {
            if (link.State == ConnectionState.Connected)
            {
                links[link.Index] |=
                    devices[show.Graph.DeviceOf(link.From).Index]
                    || devices[show.Graph.DeviceOf(link.To).Index]
                    || points.Exists(run => IsIn(run, link.From) || IsIn(run, link.To));
            }
        }

        return new Exclusions(devices, links, points);
    }

    private static bool IsIn((int First, int Width) run, PointIndex point) => point.Value >= run.First && point.Value < run.First + run.Width;
}
