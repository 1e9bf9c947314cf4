using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

/// <summary>What a shop sells.</summary>
public class AssortmentTests
{
    [Fact]
    public void It_lists_its_items_by_their_ids_in_ordinal_order_whatever_order_they_came_in()
    {
        Assortment assortment = [Some.Eyepiece(20, id: "b"), Some.Eyepiece(10, id: "B"), Some.Barlow(2, id: "a")];
        Assert.Equal(["B", "a", "b"], assortment.Select(item => item.Id));
        Assert.Equal(3, assortment.Count);
        Assert.Equal("a", assortment[1].Id);
    }
}
