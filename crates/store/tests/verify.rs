//! Damage is found wherever it is, and said in one sentence each.

use ::shop::shelf::Shelf;

use crate::shop::{Shop, dosed, hex, minute};

const SHELF: &str = "shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"way\"\nv40 = \"68 mm2/s\"\nindex = 95\n\
                     [[can]]\nid = \"gun\"\noil = \"o\"\nstroke = \"1 mL\"\n";

/// The damage that is found in a shop after a stranger's statement about a table.
async fn after(table: &str, sql: &str) -> Vec<String> {
    let shop = Shop::with(&["m"]).await;
    shop.store.record(&[dosed(1, "a", "1"), dosed(2, "b", "2")]).await.expect("entries that can be kept");
    crate::pictures::keep_raw(&shop, "ram.jpg", b"some bytes").await;
    let shelf = Shelf::read(SHELF).value.expect("a shelf without faults");
    shop.store.add_shelf(&shelf, minute(3), "keeper").await.expect("a shelf that can be kept");
    assert_eq!(shop.store.verify().await, Ok(vec![]));
    shop.force(table, sql).await;
    let damage = shop.store.verify().await.expect("damage is no error");
    damage.iter().map(ToString::to_string).collect()
}

#[tokio::test]
async fn each_kind_of_damage_is_said() {
    let other_bytes = format!("UPDATE picture SET bytes = {}", hex(&[0]));
    let cases = [
        ("entry", "UPDATE entry SET said_by = 'x' WHERE id = 2", "entry 2 is not what"),
        ("entry", "UPDATE entry SET body = 'x' WHERE id = 1", "entry 1: a body that"),
        ("fingerprint", "DELETE FROM fingerprint WHERE entry = 1", "entry 1 has no"),
        ("chart_revision", "UPDATE chart_revision SET points = 9", "number of points"),
        ("picture", "UPDATE picture SET machine = 'gone'", "table machine that is not there"),
        ("picture", &other_bytes, "\"ram.jpg\" of \"m\""),
        ("due", "UPDATE due SET entry = 2 WHERE point = '1'", "point \"1\""),
        ("setting", "UPDATE setting SET units = 'ells'", "\"ells\""),
        ("can_revision", "INSERT INTO can_revision VALUES ('c', 1, 0, 'x', 0, NULL, NULL, 'some', NULL)", "\"some\""),
        (
            "can_revision",
            "INSERT INTO can_revision VALUES ('c', 1, 0, 'x', 0, NULL, NULL, NULL, NULL)",
            "can \"c\" on the",
        ),
        ("seal", "DELETE FROM seal WHERE of_table = 'picture'", "picture 1 has no"),
        // What can be read and means something else.
        ("setting", "UPDATE setting SET cold_k = 280", "setting 1 is not what was written"),
        ("setting", "UPDATE setting SET warm_k = 300", "setting 1 is not what was written"),
        ("oil_revision", "UPDATE oil_revision SET note = 'x' WHERE id = 'o'", "revision 1 of the oil \"o\""),
        ("oil_revision", "UPDATE oil_revision SET viscosity_index = 96", "revision 1 of the oil \"o\""),
        ("oil_revision", "DELETE FROM oil_revision", "revision 1 of the oil \"o\" on the shelf is gone"),
        ("can_revision", "UPDATE can_revision SET stroke = '9 mL'", "revision 1 of the can \"gun\""),
        ("chart_revision", "UPDATE chart_revision SET said_by = 'x'", "revision 1 of the chart of \"m\" is not what"),
        ("chart_revision", "UPDATE chart_revision SET recorded = 1", "revision 1 of the chart of \"m\" is not what"),
        ("picture", "UPDATE picture SET recorded = 1", "picture 1 is not what was written"),
        ("picture", "UPDATE picture SET taken = 1", "picture 1 is not what was written"),
    ];
    for (table, sql, says) in cases {
        let found = after(table, sql).await;
        assert!(found.iter().any(|one| one.contains(says)), "{sql}: {found:?}");
        assert!(found.iter().all(|one| !one.contains('\n')), "{found:?}");
    }
}
