using System.CommandLine;
using RoutingRules.Reports.Names;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Commands;

/// <summary>The option that says what devices and points are called in answers for people.</summary>
internal sealed class NamesOption : IOptionGroup
{
    private static readonly (string Word, NameStyle Style)[] Styles = [("panel", NameStyle.Panel), ("ids", NameStyle.Ids), ("both", NameStyle.Both)];

    private readonly Option<string> option;

    /// <param name="usual">What is meant without the option.</param>
    public NamesOption(NameStyle usual)
    {
        var word = Array.Find(Styles, style => style.Style == usual).Word;
        option = new Option<string>("--names")
        {
            HelpName = "STYLE",
            Description = $"""
                What points are called where people read, usually {word}.
                panel: label of the device and mark on its panel,
                ids: as the document writes them,
                both: the one, with the other behind it.
                """.ReplaceLineEndings("\n"),
            DefaultValueFactory = _ => word,
        };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && !Styles.Any(style => style.Word == result.Tokens[0].Value))
            {
                result.AddError($"'{result.Tokens[0].Value}' is no style of names; there are {NameList.Of(Styles.Select(style => style.Word))}.");
            }
        });
    }

    public IReadOnlyList<Option> Options => [option];

    /// <summary>The names that points of the shows have, where two differ those of the last; with ids the shows are not even looked at.</summary>
    public PanelNames Of(ParseResult parsed, params IEnumerable<ResolvedShow> shows)
    {
        var style = Array.Find(Styles, style => style.Word == parsed.GetRequiredValue(option)).Style;
        return style == NameStyle.Ids ? PanelNames.Ids : PanelNames.Of(style, [.. shows]);
    }
}
