from app.book.ids import ALPHABET, new_id


def test_ids_are_twenty_letters_that_can_be_read_aloud():
    one = new_id()
    assert len(one) == 20
    assert set(one) <= set(ALPHABET)
    assert not set(one) & set("ilou")


def test_no_two_are_alike():
    assert len({new_id() for _ in range(1_000)}) == 1_000


def test_later_ids_sort_later(monkeypatch):
    moments = [1, 10**6, 33 * 10**6, 10**15, 1_790_000_000 * 10**9]
    made = []
    for moment in moments:
        monkeypatch.setattr("time.time_ns", lambda moment=moment: moment)
        made.append(new_id()[:10])
    assert made == sorted(made)
    assert made[2] == "0000000011"
