using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Planning.LineChecks;

/// <summary>Rewrites lists of a show element by element and remembers the edits.</summary>
internal sealed class ShowRewriting(Show show)
{
    private readonly List<ShowEdit> edits = [];

    public Show Show { get; private set; } = show;

    public IReadOnlyList<ShowEdit> Edits => edits;

    /// <summary>Puts other elements, one or none in the place of each.</summary>
    public void Each<T>(ShowList<T> list, ValueList<T> elements, Func<T, int, IReadOnlyList<T>> rewrite)
        where T : class
    {
        var made = new List<ShowEdit>();
        for (var i = elements.Count - 1; i >= 0; i--)
        {
            ListEdits.Exchange(made, list, i, elements[i], rewrite(elements[i], i));
        }

        made.ForEach(Apply);
    }

    /// <summary>The same for what does not depend on the position.</summary>
    public void Each<T>(ShowList<T> list, ValueList<T> elements, Func<T, IReadOnlyList<T>> rewrite)
        where T : class => Each(list, elements, (element, _) => rewrite(element));

    /// <summary>Puts an element at the end.</summary>
    public void Add<T>(ShowList<T> list, ValueList<T> elements, T element)
        where T : class => Apply(ShowEdit.Insert(list, elements.Count, element));

    /// <summary>Applies edits that were made for the show as it stands.</summary>
    public void Take(IEnumerable<ShowEdit> more)
    {
        foreach (var edit in more)
        {
            Apply(edit);
        }
    }

    private void Apply(ShowEdit edit)
    {
        Show = edit.Apply(Show) ?? throw new InvalidOperationException($"The edit of {edit.Pointer} does not fit the show it was made for.");
        edits.Add(edit);
    }
}
