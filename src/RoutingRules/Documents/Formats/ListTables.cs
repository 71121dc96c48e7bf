using RoutingRules.Configuration;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Documents.Formats;

/// <summary>The tables of what a configuration says about lists.</summary>
internal static class ListTables
{
    public static ObjectTable<ListsConfig> Lists { get; } = CreateLists();

    /// <summary>The members of a type that a list has columns for: all but what other tools keep there.</summary>
    public static IEnumerable<string> Columns(ObjectShape shape) => shape.Members.Select(member => member.Name).Where(name => name != "extensions");

    private static ObjectTable<ListsConfig> CreateLists()
    {
        var table = new TableBuilder<ListsConfig>("listsConfig", "lists", "How the lists of feeds and lines are written that import reads and export writes.");
        var separator = table.OptionalValue(
            "separator",
            new ClosedWordKind<ListSeparator>(
                "listSeparator",
                ("comma", ListSeparator.Comma),
                ("semicolon", ListSeparator.Semicolon),
                ("tab", ListSeparator.Tab)
            ),
            static lists => lists.Separator,
            "What stands between cells. Absent means that reading finds out and writing takes a comma."
        );
        var feeds = table.Default("feeds", CreateList("feed", IntentTables.Feed.Shape), new ListConfig(), static lists => lists.Feeds, "The list of feeds.");
        var lines = table.Default("lines", CreateList("line", IntentTables.Line.Shape), new ListConfig(), static lists => lists.Lines, "The list of lines.");
        return table.Build(
            (in Slots read) =>
                new ListsConfig
                {
                    Separator = separator[read],
                    Feeds = feeds[read],
                    Lines = lines[read],
                }
        );
    }

    private static ObjectTable<ListConfig> CreateList(string what, ObjectShape shape)
    {
        var member = new ClosedWordKind<string>($"{what}Member", [.. Columns(shape).Select(name => (name, name))]);
        var table = new TableBuilder<ListConfig>($"{what}List", "list", $"How the list of {what}s is written.");
        var columns = table.List(
            "columns",
            CreateColumn(what, member),
            static list => list.Columns,
            "Columns by other names than those of the members; of several for one header the last counts."
        );
        var ignore = table.List("ignore", Kinds.FilledText, static list => list.Ignore, "Headers of columns that are not read.");
        var words = table.List("words", CreateWord(what, member), static list => list.Words, "Other words in cells; of several for one cell the last counts.");
        return table.Build(
            (in Slots read) =>
                new ListConfig
                {
                    Columns = columns[read],
                    Ignore = ignore[read],
                    Words = words[read],
                }
        );
    }

    private static ObjectTable<ListColumn> CreateColumn(string what, ClosedWordKind<string> word)
    {
        var table = new TableBuilder<ListColumn>($"{what}Column", "column", "What a column is called, and which member it holds.");
        var header = table.Required(
            "header",
            Kinds.FilledText,
            static column => column.Header,
            "The text at its head; case, spaces, hyphens and underscores do not matter."
        );
        var member = table.Required("member", word, static column => column.Member, $"The member of a {what}.");
        return table.Build((in Slots read) => new ListColumn { Header = header[read], Member = member[read] });
    }

    private static ObjectTable<ListWord> CreateWord(string what, ClosedWordKind<string> word)
    {
        var table = new TableBuilder<ListWord>($"{what}Word", "word", "What stands in a cell, and what it means.");
        var member = table.Required("member", word, static entry => entry.Member, $"The member of a {what} that the cell is of.");
        var cell = table.Required("cell", Kinds.FilledText, static entry => entry.Cell, "What stands in the cell; case and blanks around it do not matter.");
        var value = table.Required("value", Kinds.Text, static entry => entry.Value, "What is read instead; empty for an empty cell.");
        return table.Build(
            (in Slots read) =>
                new ListWord
                {
                    Member = member[read],
                    Cell = cell[read],
                    Value = value[read],
                }
        );
    }
}
