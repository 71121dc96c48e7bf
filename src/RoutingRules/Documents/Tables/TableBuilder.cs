using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>Puts a table together; members are written, and usually read, in the order they are added.</summary>
/// <param name="definition">The name of the object in schemas.</param>
/// <param name="title">What people call it, in the singular.</param>
/// <param name="doc">What it is.</param>
internal sealed class TableBuilder<T>(string definition, string title, string doc)
    where T : class
{
    private readonly List<Member<T>> members = [];
    private ulong[] choice = [];

    /// <summary>A member that must be there.</summary>
    public Member<T, TValue> Required<TValue>(string name, Kind<TValue> kind, Func<T, TValue> get, string doc) => Add(name, kind, true, default!, get, doc);

    /// <summary>A member whose absence means a value.</summary>
    public Member<T, TValue> Default<TValue>(string name, Kind<TValue> kind, TValue absent, Func<T, TValue> get, string doc) =>
        Add(name, kind, false, absent, get, doc);

    /// <summary>A text or object that may be absent.</summary>
    public Member<T, TValue?> Optional<TValue>(string name, Kind<TValue> kind, Func<T, TValue?> get, string doc)
        where TValue : class => Add<TValue?>(name, kind!, false, null, get, doc);

    /// <summary>A value that may be absent.</summary>
    public Member<T, TValue?> OptionalValue<TValue>(string name, Kind<TValue> kind, Func<T, TValue?> get, string doc)
        where TValue : struct => Add(name, new NullableKind<TValue>(kind, nullable: false), false, null, get, doc);

    /// <summary>A list that may be absent, which means the same as empty.</summary>
    public Member<T, ValueList<TItem>> List<TItem>(string name, Kind<TItem> element, Func<T, ValueList<TItem>> get, string doc, int min = 0) =>
        Add(name, new ListKind<TItem>(element, min), false, default, get, doc);

    /// <summary>A list that must be there.</summary>
    public Member<T, ValueList<TItem>> RequiredList<TItem>(string name, Kind<TItem> element, Func<T, ValueList<TItem>> get, string doc, int min = 0) =>
        Add(name, new ListKind<TItem>(element, min), true, default, get, doc);

    /// <summary>What other tools keep here.</summary>
    public Member<T, ExtensionData?> Extensions(Func<T, ExtensionData?> get) =>
        Optional("extensions", Kinds.Extensions, get, "Content of other tools and plugins: any object, kept on writing and never read.");

    /// <summary>Of these groups of members exactly one must be there.</summary>
    public void ExactlyOne(params MemberShape[][] alternatives) =>
        choice = [.. alternatives.Select(group => group.Aggregate(0UL, (mask, member) => mask | (1UL << members.IndexOf((Member<T>)member))))];

    public ObjectTable<T> Build(Build<T> build)
    {
        var all = members.ToArray();
        return new ObjectTable<T>(new ObjectShape(definition, title, doc, all, choice), all, build);
    }

    private Member<T, TValue> Add<TValue>(string name, Kind<TValue> kind, bool required, TValue absent, Func<T, TValue> get, string doc)
    {
        var member = new Member<T, TValue>(name, kind, members.Count, required, absent, get, doc);
        members.Add(member);
        return member;
    }
}
