using System.Globalization;
using System.Text;
using RoutingRules.ChannelMaps;
using RoutingRules.Cli.Output;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Cli.Commands;

/// <summary>What a command line of export or import is about: a list, or a channel map of a device.</summary>
/// <param name="List">The word of <c>--list</c>, or null.</param>
/// <param name="Map">The word of <c>--map</c>, or null.</param>
/// <param name="Device">The device of <c>--device</c>, or null.</param>
internal sealed record MapChoice(string? List, string? Map, string? Device)
{
    public bool IsMap => Map is not null;

    public IntentList Kind => ListChoices.Lists[List!];

    /// <exception cref="UsageException">The words do not go together.</exception>
    public void Refuse()
    {
        var problem =
            List is null && Map is null ? "--list is missing; give --list feeds or --list lines, or --map with --device."
            : List is not null && Map is not null ? "--list and --map cannot be had together; take one of them."
            : Map is not null && string.IsNullOrEmpty(Device) ? "--map is about one device; name it with --device."
            : Map is null && Device is not null ? "--device is for --map; leave it away with --list."
            : null;
        if (problem is not null)
        {
            throw new UsageException(problem);
        }
    }

    /// <summary>The map of the device.</summary>
    /// <exception cref="UsageException">There is none.</exception>
    public byte[] Write(RoutingEngine engine, Show show)
    {
        using var output = new MemoryStream();
        Trying(() => ListChoices.Maps[Map!](engine, show, new Id<Device>(Device!), output));
        return output.ToArray();
    }

    /// <summary>Reads a map into a show.</summary>
    /// <exception cref="UsageException">The device has no such map.</exception>
    public Imported Read(RoutingEngine engine, Show show, ReadOnlyMemory<byte> utf8) =>
        Trying(() =>
        {
            if (Map == "1722.1")
            {
                return Told(StreamPortImport.Apply(engine, show, new Id<Device>(Device!), utf8), "");
            }

            var map = Is08Map.Read(new Id<Device>(Device!), utf8, out var problems);
            return problems.IsEmpty
                ? Told(MapImport.Apply(engine, show, map), string.Create(CultureInfo.InvariantCulture, $"of {map.Channels.Count} channels in the map "))
                : new Imported(null, [], problems, [], "", "");
        });

    private static Imported Told(MapImportResult result, string of)
    {
        var brief = string.Create(CultureInfo.InvariantCulture, $"{of}{result.Moves.Count} take something else");
        var account = new StringBuilder(brief).Append('\n');
        foreach (var move in result.Moves)
        {
            account.Append(CultureInfo.InvariantCulture, $"  {move.At}: {Name(move.After)} instead of {Name(move.Before)}\n");
        }

        return new Imported(result.Show, result.Edits, result.Problems, [], brief, account.ToString());
    }

    private static string Name(Point? source) => source?.ToString() ?? "silence";

    private static T Trying<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (ChannelMapException fault)
        {
            throw new UsageException(fault.Message);
        }
    }

    private static void Trying(Action work) =>
        Trying(() =>
        {
            work();
            return true;
        });
}
