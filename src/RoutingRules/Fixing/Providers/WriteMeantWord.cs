using RoutingRules.Checking.Facts.Words;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Writes the word that was probably meant. Unsafe: from then on the element is judged, held and placed as what the word says.</summary>
internal sealed class WriteMeantWord : FixProvider
{
    private const string Caution = "Ask whoever wrote it first: from then on it is judged and placed as what the word says.";

    public override string RuleId => "RR1109";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var word = ShowWords.Doubtful(context.Resolved).Find(word => word.Pointer == finding.Pointer && finding.Entities.Contains(word.Of));
        return word is not null && Edit(context.Show, word, finding.Pointer.Split('/')) is { } edit
            ? [Fix.Of($"Write '{word.Meant}' for {word.Name}", FixSafety.Unsafe, [edit], Caution)]
            : [];
    }

    private static ShowEdit? Edit(Show show, DoubtfulWord word, string[] place)
    {
        var index =
            place.Length > 2 && place[1] == "feeds" ? place[2]
            : place.Length > 3 ? place[3]
            : "";
        return int.TryParse(index, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var at)
            ? (place[1], place[2]) switch
            {
                ("feeds", _) => Replace(
                    ShowLists.Feeds,
                    show.Feeds,
                    at,
                    feed => word.What == "role" ? feed with { Role = ShowWords.AsMeant(feed).Role } : feed with { Part = word.Meant }
                ),
                (_, "networks") => Replace(ShowLists.Networks, show.Rig.Networks, at, ShowWords.AsMeant),
                (_, "links") => Replace(ShowLists.Links, show.Rig.Links, at, ShowWords.AsMeant),
                _ => null,
            }
            : null;
    }

    private static ShowEdit Replace<T>(ShowList<T> list, ValueList<T> elements, int at, Func<T, T> change)
        where T : class => ShowEdit.Replace(list, at, elements[at], change(elements[at]));
}
