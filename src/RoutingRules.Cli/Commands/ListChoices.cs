using RoutingRules.ChannelMaps;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Cli.Commands;

/// <summary>The words that export and import share.</summary>
internal static class ListChoices
{
    public static IReadOnlyDictionary<string, IntentList> Lists { get; } =
        new Dictionary<string, IntentList>(StringComparer.Ordinal) { ["feeds"] = IntentList.Feeds, ["lines"] = IntentList.Lines };

    public static IReadOnlyDictionary<string, ListSeparator> Separators { get; } =
        new Dictionary<string, ListSeparator>(StringComparer.Ordinal)
        {
            ["comma"] = ListSeparator.Comma,
            ["semicolon"] = ListSeparator.Semicolon,
            ["tab"] = ListSeparator.Tab,
        };

    /// <summary>How each kind of map is written.</summary>
    public static IReadOnlyDictionary<string, Action<RoutingEngine, Show, Id<Device>, Stream>> Maps { get; } =
        new Dictionary<string, Action<RoutingEngine, Show, Id<Device>, Stream>>(StringComparer.Ordinal)
        {
            ["is-08"] = static (engine, show, device, output) => Is08Map.Write(ChannelMap.Of(engine, show, device), output),
            ["1722.1"] = static (engine, show, device, output) => StreamPortMap.Write(engine, show, device, output),
        };

    /// <summary>What a configuration says about lists, with the separator of the command line over it.</summary>
    public static ListsConfig With(ListsConfig config, string? separator) => separator is null ? config : config with { Separator = Separators[separator] };
}
