namespace RoutingRules.Checking.Facts.Documents;

/// <summary>The ids of a list, for asking whether one is among them; few are compared one by one, many are hashed on the first question.</summary>
internal sealed class NameSet(int count, Func<int, string> nameAt)
{
    private const int Few = 8;
    private HashSet<string>? hashed;
    private string[]? listed;

    public bool Contains(string name)
    {
        if (count > Few)
        {
            return (hashed ??= Hash()).Contains(name);
        }

        foreach (var known in listed ??= List())
        {
            if (string.Equals(known, name, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private string[] List()
    {
        var names = new string[count];
        for (var i = 0; i < count; i++)
        {
            names[i] = nameAt(i);
        }

        return names;
    }

    private HashSet<string> Hash()
    {
        var names = new HashSet<string>(count, StringComparer.Ordinal);
        for (var i = 0; i < count; i++)
        {
            names.Add(nameAt(i));
        }

        return names;
    }
}
