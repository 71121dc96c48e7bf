using RoutingRules.Configuration;
using RoutingRules.Lists;

namespace RoutingRules.Cli.Commands;

/// <summary>The words that export and import share.</summary>
internal static class ListChoices
{
    public static IReadOnlyDictionary<string, IntentList> Lists { get; } = new Dictionary<string, IntentList>(StringComparer.Ordinal)
    {
        ["feeds"] = IntentList.Feeds,
        ["lines"] = IntentList.Lines,
    };

    public static IReadOnlyDictionary<string, ListSeparator> Separators { get; } = new Dictionary<string, ListSeparator>(StringComparer.Ordinal)
    {
        ["comma"] = ListSeparator.Comma,
        ["semicolon"] = ListSeparator.Semicolon,
        ["tab"] = ListSeparator.Tab,
    };

    /// <summary>What a configuration says about lists, with the separator of the command line over it.</summary>
    public static ListsConfig With(ListsConfig config, string? separator) => separator is null ? config : config with { Separator = Separators[separator] };
}
